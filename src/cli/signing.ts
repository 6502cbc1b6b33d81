/** Signing what the register holds with a key of this computer. */

import type { IssuedRegister } from '../documents/issued.ts'
import { bytesOf } from '../register/bytes.ts'
import type { RegisterEvent } from '../register/events.ts'
import { sign } from '../register/keys.ts'
import { Failure } from '../site/failure.ts'
import { keysFolder, privateKey } from './keys-folder.ts'

/** A key whose private half lies on this computer. */
export interface SigningKey {
  readonly id: string
  readonly privatePem: string
}

/**
 * The key to sign with: the one asked for, or the newest in use that this computer has.
 *
 * @returns undefined where none was asked for and this computer has none
 * @throws Failure where the one asked for cannot be used
 */
export async function signingKey(
  { log }: IssuedRegister,
  asked: string | undefined
): Promise<SigningKey | undefined> {
  const folder = keysFolder(process.env)
  const inUse = [...log.standing.keys.values()].filter(({ retired }) => !retired).reverse()
  const wanted = asked === undefined ? inUse : inUse.filter(({ key }) => key === asked)
  for (const { key: id } of wanted) {
    const privatePem = await privateKey(folder, id)
    if (privatePem !== undefined) return { id, privatePem }
  }
  if (asked === undefined) return undefined
  throw new Failure(
    wanted.length === 0
      ? `${asked} is no key in use: the register's page lists them`
      : `the private half of ${asked} is not in ${folder}`
  )
}

/** The event that signs a frozen document. */
export async function signedEvent(
  { id, privatePem }: SigningKey,
  certificate: { readonly number: string; readonly revision: number },
  text: string
): Promise<RegisterEvent> {
  const { number, revision } = certificate
  const signature = await sign(privatePem, bytesOf(text))
  return { is: 'signed', number, revision, key: id, signature }
}
