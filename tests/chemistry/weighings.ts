/** Weighings that no dish can show, with what each model that takes them must say. */

export const dish = { dish_g: 25.124, before_g: 26.124, after_g: 25.1312 }

export const impossibleWeighings = [
  [{ dish_g: -1 }, 'dish_g must be at least 0, got -1'],
  [{ before_g: 25.124 }, 'before_g must be greater than dish (25.124), got 25.124'],
  [{ before_g: 20 }, 'before_g must be greater than dish (25.124), got 20'],
  [{ after_g: 26.125 }, 'after_g must be at most before (26.124 g), got 26.125'],
  [{ after_g: 25.123 }, 'dish_g must be at most after (25.123 g), got 25.124']
] as const
