/** What a lot's page says of itself to search engines, in English. */

export const described = {
  figures: 'Figures for programs',
  /** The JSON beside an issued certificate. */
  data: (certificate: string) => `${certificate}, what it says`,
  product: (grade: string, lot: string) => `${grade}, lot ${lot}`,
  grade: (title: string, revision: string) => `${title}, revision ${revision}`,
  typical: 'typical of the grade, not measured on this lot',
  method: (id: string, edition: string, title: string) => `${id}, edition ${edition}: ${title}`,
  uncertainty: (k: string | undefined) =>
    `expanded uncertainty U${k === undefined ? '' : `, k = ${k}`}`,
  limit: (of: string) => `limit for ${of}`
}
