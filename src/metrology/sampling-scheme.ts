/** What a sampling plan is asked for by: the general levels and acceptance quality limits of ISO 2859-1. */

export const inspectionLevels = ['I', 'II', 'III'] as const
export type InspectionLevel = (typeof inspectionLevels)[number]

/** Per cent nonconforming, as they are written; those the plans here hold. */
export const aqls = [
  '0.065',
  '0.10',
  '0.15',
  '0.25',
  '0.40',
  '0.65',
  '1.0',
  '1.5',
  '2.5',
  '4.0',
  '6.5'
] as const
export type Aql = (typeof aqls)[number]
