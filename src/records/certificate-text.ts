/** The record of a new certificate, as a file. */

import { stringify } from 'yaml'
import type { CertificateOrder } from './types.ts'

/** File name of a certificate's record. */
export const certificateFile = ({
  number,
  revision
}: Pick<CertificateOrder, 'number' | 'revision'>): string => `${number}-r${revision}.yaml`

/** Text of a certificate's record. */
export const certificateText = (order: CertificateOrder): string => stringify(order)
