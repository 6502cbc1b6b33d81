/** Why a certificate with its key cannot sign; the message is the end of a sentence on the file. */
export class Unusable extends Error {
  override readonly name = 'Unusable'
}
