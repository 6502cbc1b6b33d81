/** The names that models know substances under. */

const aliases: Readonly<Record<string, string>> = {
  'sodium bicarbonate': 'sodium hydrogen carbonate',
  'caustic soda': 'sodium hydroxide',
  'ammonia solution': 'ammonia',
  'aqueous ammonia': 'ammonia',
  'ammonium hydroxide': 'ammonia',
  'orthophosphoric acid': 'phosphoric acid',
  'glacial acetic acid': 'acetic acid',
  'deionised water': 'water'
}

/** A substance as the models call it: 'Sulphuric acid' is 'sulfuric acid'. */
export function substanceName(written: string): string {
  const plain = written.trim().toLowerCase().replace(/sulph/gu, 'sulf')
  return aliases[plain] ?? plain
}
