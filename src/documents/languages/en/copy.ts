/** A customer's copy of a certificate, in English. */

import { counted, date } from './numbers.ts'

export const copy = {
  customer: 'Customer',
  address: 'Address',
  order: 'Order',
  noOrder: 'no order reference',
  shipment: 'Shipment',
  part: 'Your part',
  quantity: 'Quantity',
  inContainers: (mass: string, n: number, numbers: string) =>
    `${mass} in ${counted(n, 'container')}: ${numbers}`,
  statement: (shipment: string, sent: string) =>
    `Customer’s copy for shipment ${shipment} of ${date(sent)}: the certificate of the same number, with customer, order, quantity and the name of who signed. Its results are those that were issued.`,
  again: (copyNumber: number, reason: string) =>
    `Copy ${copyNumber} for this shipment, in place of copy ${copyNumber - 1}: ${reason}.`,
  preview: 'Preview of a customer’s copy, not sent',
  meets: (total: number) =>
    `Meets ${total === 1 ? 'the limit' : `all ${total} limits`} of the customer.`,
  misses: (n: number, total: number, titles: string) =>
    `Does not meet ${n} of ${counted(total, 'limit')} of the customer: ${titles}.`,
  limits: 'Customer’s limits',
  columns: {
    property: 'Property',
    unit: 'Unit',
    result: 'Result',
    uncertainty: 'U',
    limit: 'Limit',
    verdict: 'Verdict'
  },
  accepted: (by: string, on: string, because: string) =>
    `Taken by the customer all the same: ${by}, ${date(on)}: ${because}.`
}
