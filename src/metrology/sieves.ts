/**
 * Wire-cloth test sieves: the number of ASTM E11, the aperture it stands for, and how far a sieve's
 * mean aperture may lie from it.
 *
 * '+80' means retained on No. 80, 180 µm; '−80' means through it. Lists older than today's standards
 * give 297, 177 and 149 µm for what is now 300, 180 and 150; the older screen count '32 mesh' is No. 35.
 *
 * Source: apertures and tolerances on the mean aperture of ISO 3310-1:2016, numbers of ASTM E11-17 (from
 * a published transcription, not checked against the print).
 */

export interface Sieve {
  readonly number: number
  readonly aperture_um: number
  /** A sieve's mean aperture lies within this of the nominal one, µm. */
  readonly tolerance_um: number
}

const sieve = (number: number, aperture_um: number, tolerance_um: number): Sieve => ({
  number,
  aperture_um,
  tolerance_um
})

/** Coarsest first. */
export const sieves: readonly Sieve[] = [
  sieve(10, 2000, 60),
  sieve(12, 1700, 50),
  sieve(14, 1400, 40),
  sieve(16, 1180, 40),
  sieve(18, 1000, 30),
  sieve(20, 850, 26),
  sieve(25, 710, 22),
  sieve(30, 600, 19),
  sieve(35, 500, 16),
  sieve(40, 425, 14),
  sieve(45, 355, 12),
  sieve(50, 300, 10),
  sieve(60, 250, 8.9),
  sieve(70, 212, 7.8),
  sieve(80, 180, 6.8),
  sieve(100, 150, 6),
  sieve(120, 125, 5.2),
  sieve(140, 106, 4.7),
  sieve(170, 90, 4.2),
  sieve(200, 75, 3.7),
  sieve(325, 45, 2.8)
]

/** The sieve of an aperture, or undefined where none has it. */
const sieveOfAperture = (aperture_um: number): Sieve | undefined =>
  sieves.find(one => one.aperture_um === aperture_um)

/** The sieve a record means by '300 µm' or 'No. 50', or undefined. */
export function sieveNamed(text: string): Sieve | undefined {
  const [, aperture, number] = /^(?:(\d+)\s*[µμu]m|No\.?\s*(\d+))$/u.exec(text.trim()) ?? []
  if (aperture !== undefined) return sieveOfAperture(Number(aperture))
  return sieves.find(one => one.number === Number(number))
}

/** '300 µm (No. 50)'. */
export const sieveText = ({ aperture_um, number }: Sieve): string =>
  `${aperture_um} µm (No. ${number})`
