/** lotfolio schemas: the schemas editors check records by. */

import { join, relative, resolve } from 'node:path'
import { Command } from 'commander'
import { editorSchemas } from '../records/editor-schema.ts'
import { userFolder } from './folders.ts'
import { refuseStray } from './usage.ts'
import { writeOver } from './write.ts'

const examples = `
Examples:
  lotfolio schemas
  lotfolio schemas --out ../my-workshop/schemas

The first line of a record names its schema: # yaml-language-server: $schema=../schemas/batch.json`

export const schemasCommand = (): Command =>
  new Command('schemas')
    .description('write the schemas that editors complete and check records by')
    .option('--out <DIR>', 'folder to write to (default: schemas)')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(writeSchemas)

async function writeSchemas({ out }: { out?: string }, command: Command): Promise<void> {
  refuseStray(command, process.env)
  const folder = out === undefined ? resolve('schemas') : resolve(userFolder(process.env), out)
  const schemas = editorSchemas()
  for (const [name, schema] of schemas)
    await writeOver(join(folder, name), `${JSON.stringify(schema, null, 1)}\n`)
  process.stdout.write(
    `Wrote ${schemas.size} schemas to ${relative(userFolder(process.env), folder) || '.'}\n`
  )
}
