/** The demo's public site with its register: the documents of `demo.ts` know of none. */

import { openRegister } from '../../src/documents/issued.ts'
import { readRegister } from '../../src/site/read-register.ts'
import { siteOf } from '../documents/demo.ts'
import { demoFiles } from '../records-on-disk.ts'

export const issuedSite = siteOf(demoFiles, {
  edition: 'public',
  register: await openRegister(await readRegister('content'))
})
