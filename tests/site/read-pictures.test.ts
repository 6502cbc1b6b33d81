/** The folder of pictures, with what should not lie in it. */

import { mkdtemp, mkdir, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { readContent } from '../../src/site/read-content.ts'
import { readPictures } from '../../src/site/read-pictures.ts'

async function emptyContent(): Promise<string> {
  const content = await mkdtemp(join(tmpdir(), 'lotfolio-pictures-'))
  onTestFinished(() => rm(content, { recursive: true }))
  return content
}

test('a link that leads to no file is a picture that cannot be shown, and a folder is none', async () => {
  const content = await emptyContent()
  const pictures = join(content, 'pictures')
  await mkdir(join(pictures, 'folder.jpg'), { recursive: true })
  await symlink('gone.jpg', join(pictures, 'gone-link.jpg'))
  await symlink('folder.jpg', join(pictures, 'folder-link.jpg'))
  await symlink('ring.jpg', join(pictures, 'ring.jpg'))
  await writeFile(join(pictures, 'empty.png'), '')
  const nowhere = { fault: 'is a link that leads to no file' }
  expect(Object.fromEntries(await readPictures(content))).toEqual({
    'gone-link.jpg': nowhere,
    'folder-link.jpg': nowhere,
    'ring.jpg': nowhere,
    'empty.png': { fault: 'is neither a JPEG nor a PNG' }
  })
})

test('a file in the place of the folder is told in one line', async () => {
  const content = await emptyContent()
  await writeFile(join(content, 'pictures'), '')
  await expect(readPictures(content)).rejects.toThrow(/pictures: is not a folder$/u)
})

test('a record whose link leads nowhere is named, not the folder around it', async () => {
  const content = await emptyContent()
  await symlink('gone.yaml', join(content, 'producer.yaml'))
  await expect(readContent(content)).rejects.toThrow(/producer\.yaml: does not exist$/u)
})

test('a picture that was changed is looked at again, one that was not is as before', async () => {
  const content = await emptyContent()
  const folder = join(content, 'pictures')
  await mkdir(folder)
  const picture = await readFile('content/pictures/EB-26-015-worms.jpg')
  await writeFile(join(folder, 'a.jpg'), picture)
  const head = async () => (await readPictures(content)).get('a.jpg')
  const first = await head()
  expect(first).toMatchObject({ width_px: 960 })
  expect(await head()).toBe(first)
  await writeFile(join(folder, 'a.jpg'), picture.subarray(0, 1000))
  expect(await head()).toEqual({ fault: 'is cut short or damaged' })
})
