/** What the demo workshop has issued, without any of its documents being made. */

import { join } from 'node:path'
import { openRegister } from '../../src/documents/issued.ts'
import { readRegister } from '../../src/site/read-register.ts'
import { root } from '../root.ts'

export const demoRegister = await openRegister(await readRegister(join(root, 'content'), root))
