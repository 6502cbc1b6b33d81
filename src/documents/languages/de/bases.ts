/**
 * Formulas and their sources in German. Symbols are the same in any language, and so are numbers and
 * titles of standards; words in formulas and around citations are German.
 */

import type { OpenFormula, OpenSource } from '../../../evaluate/bases.ts'

const memory = 'aus dem Gedächtnis, nicht mit dem Druck verglichen'

const formulas: Readonly<Record<OpenFormula, string>> = {
  'A = (after − dish) / ((before − dish) · (1 − w)), w moisture':
    'A = (nachher − Schale) / ((vorher − Schale) · (1 − w)), w Feuchte',
  'w(S) = M(S) / M(BaSO4) · ((m(BaSO4) − m blank) / m)':
    'w(S) = M(S) / M(BaSO4) · ((m(BaSO4) − m blind) / m)',
  'w(SO4) = M(SO4) / M(BaSO4) · ((m(BaSO4) − m blank) / m)':
    'w(SO4) = M(SO4) / M(BaSO4) · ((m(BaSO4) − m blind) / m)',
  'w(H2SO4) = w(S) · M(H2SO4) / M(S)': 'w(H2SO4) = w(S) · M(H2SO4) / M(S)',
  'w = (before − after) / (before − dish)': 'w = (vorher − nachher) / (vorher − Schale)',
  'FC = 100 % − A − V, A ash and V volatile matter, both dry basis':
    'FC = 100 % − A − V, A Asche und V flüchtige Bestandteile, beide wasserfrei',
  'C = 100 % − A / (1 − V), A ash and V volatile matter, both dry basis':
    'C = 100 % − A / (1 − V), A Asche und V flüchtige Bestandteile, beide wasserfrei',
  'w = (V − V0) · c · (M(H2SO4) / 2) · (V extract / V aliquot) / m':
    'w = (V − V0) · c · (M(H2SO4) / 2) · (V Auszug / V Aliquot) / m',
  'b = 2 · w / M(H2SO4)': 'b = 2 · w / M(H2SO4)',
  'w = (c − c blank) · V extract / m': 'w = (c − c blind) · V Auszug / m',
  'L = (m dry − m end) / m dry': 'L = (m trocken − m Ende) / m trocken',
  'VL = 2 · t · s · √(1/q + 1/n), VL ≥ 2 · 1.645 · (d / √6) · √(1/q + 1/n)':
    'VL = 2 · t · s · √(1/q + 1/n), VL ≥ 2 · 1,645 · (d / √6) · √(1/q + 1/n)',
  'V = (L − w) / (1 − w), L = (before − after) / (before − dish), w moisture':
    'V = (L − w) / (1 − w), L = (vorher − nachher) / (vorher − Schale), w Feuchte',
  'ρ = m / V, poured': 'ρ = m / V, geschüttet',
  'ρ = m / V, tapped': 'ρ = m / V, gestampft',
  'C = (P − M) / P, P under preload, M under total load':
    'C = (P − M) / P, P unter Vorlast, M unter Gesamtlast',
  'R = (B − M) / (P − M), B once unloaded': 'R = (B − M) / (P − M), B nach dem Entlasten',
  'S = (B − M) / M': 'S = (B − M) / M',
  'κ₂₅ = (κ − κ water) / (1 + α · (t − 25 °C)), α 0.020 ± 0.005 per K':
    'κ₂₅ = (κ − κ Wasser) / (1 + α · (t − 25 °C)), α 0,020 ± 0,005 je K',
  'R = (D0 − D_f) / D0, D0 stretch of the bolt when tightened, D_f at the end':
    'R = (D0 − D_f) / D0, D0 Dehnung der Schraube beim Anziehen, D_f am Ende',
  'EV = V / m, m before expansion': 'EV = V / m, m vor dem Expandieren',
  'ρ = m / (l · w · t)': 'ρ = m / (l · w · t)',
  'm″ = m / (l · w)': 'm″ = m / (l · w)',
  'λ = M · (p_1 / T_1 − p_2 / T_2) · V / (R · t · π · d), p absolute, d mean diameter of the ring':
    'λ = M · (p_1 / T_1 − p_2 / T_2) · V / (R · t · π · d), p absolut, d mittlerer Durchmesser des Rings',
  'P = 100 · (1 − ρ / ρ crystal)': 'P = 100 · (1 − ρ / ρ Kristall)',
  'R_s = C · F · V / I, C = π / (ln 2 + ln(((d/s)² + 3) / ((d/s)² − 3))), on a disc of diameter d':
    'R_s = C · F · V / I, C = π / (ln 2 + ln(((d/s)² + 3) / ((d/s)² − 3))), auf einer Scheibe vom Durchmesser d',
  'exp(−π · R_a / R_s) + exp(−π · R_b / R_s) = 1': 'exp(−π · R_a / R_s) + exp(−π · R_b / R_s) = 1',
  'ρ = R · w · t / L, L between the voltage contacts':
    'ρ = R · w · t / L, L zwischen den Spannungskontakten',
  'σ = 1 / ρ': 'σ = 1 / ρ',
  'L = Σ L_i, L_i pieces between the splices': 'L = Σ L_i, L_i Stücke zwischen den Stößen',
  'w = (Σ w_i) / n, n places along the roll': 'w = (Σ w_i) / n, n Stellen entlang der Rolle',
  'R = (Σ m coarser) / (Σ m recovered), coarser what lies on the sieve and above it':
    'R = (Σ m gröber) / (Σ m wiedergefunden), gröber auf dem Sieb und darüber',
  'L = (m charged − Σ m recovered) / m charged':
    'L = (m eingesetzt − Σ m wiedergefunden) / m eingesetzt',
  'ln d = ln a + (p − P(a)) / (P(b) − P(a)) · (ln b − ln a)':
    'ln d = ln a + (p − P(a)) / (P(b) − P(a)) · (ln b − ln a)',
  'σ = F / (w · t), w · t before the test': 'σ = F / (w · t), w · t vor der Prüfung',
  'f = F / w': 'f = F / w',
  'k = α · ρ · c, α diffusivity, ρ foil density, c heat capacity':
    'k = α · ρ · c, α Temperaturleitfähigkeit, ρ Foliendichte, c spezifische Wärmekapazität',
  'k = L · σ · T, σ conductivity of the strip, T absolute temperature':
    'k = L · σ · T, σ Leitfähigkeit des Streifens, T absolute Temperatur',
  'T = a · l, t = t̄ + a · (x − x̄) + b · (y − ȳ), l length of the sheet':
    'T = a · l, t = t̄ + a · (x − x̄) + b · (y − ȳ), l Länge des Bogens',
  'T = b · w, t = t̄ + a · (x − x̄) + b · (y − ȳ), w width of the sheet':
    'T = b · w, t = t̄ + a · (x − x̄) + b · (y − ȳ), w Breite des Bogens',
  'K = EV after / EV before, after and before the soak':
    'K = EV nach / EV vor, nach und vor der Lagerung',
  'R = EV · ρ bulk': 'R = EV · ρ Schütt',
  't = (Σ t_i) / n, n positions': 't = (Σ t_i) / n, n Messstellen',
  'pH = (Σ pH_i) / n, n readings': 'pH = (Σ pH_i) / n, n Messungen',
  'T = (Σ T_i) / n, n readings': 'T = (Σ T_i) / n, n Messungen'
}

const sources: Readonly<Record<OpenSource, string>> = {
  'residue by mass as in ASTM C561 and GB/T 3521, of the dry mass':
    'Rückstand nach Masse wie in ASTM C561 und GB/T 3521, bezogen auf die Trockenmasse',
  'stoichiometry of Ba²⁺ + SO₄²⁻ → BaSO₄, all sulfur brought into solution':
    'Stöchiometrie von Ba²⁺ + SO₄²⁻ → BaSO₄, aller Schwefel in Lösung gebracht',
  'stoichiometry of Ba²⁺ + SO₄²⁻ → BaSO₄, of what water leaches out':
    'Stöchiometrie von Ba²⁺ + SO₄²⁻ → BaSO₄, für das, was Wasser auslaugt',
  'molar masses; a way of expressing sulfur, not a proof of acid':
    'molare Massen; eine Art, Schwefel anzugeben, kein Nachweis von Säure',
  'loss on drying by mass, as in ASTM C562 and GB/T 3521':
    'Trocknungsverlust nach Masse, wie in ASTM C562 und GB/T 3521',
  'fixed carbon by difference, as in GB/T 3521':
    'fixer Kohlenstoff als Differenz, wie in GB/T 3521',
  'carbon by difference, of the mass left without volatile matter':
    'Kohlenstoff als Differenz, bezogen auf die Masse ohne flüchtige Bestandteile',
  'stoichiometry of H2SO4 + 2 NaOH → Na2SO4 + 2 H2O':
    'Stöchiometrie von H2SO4 + 2 NaOH → Na2SO4 + 2 H2O',
  'stoichiometry of H2SO4: two H⁺ a molecule': 'Stöchiometrie von H2SO4: zwei H⁺ je Molekül',
  'definition of a mass fraction; leachable only, not total content':
    'Definition eines Massenanteils; nur Auslaugbares, nicht der Gesamtgehalt',
  'definition of a loss by mass, of the preconditioned mass, as in API Std 622, 6.1.1':
    'Definition eines Masseverlusts, bezogen auf die vorbehandelte Masse, wie in API Std 622, 6.1.1',
  'IUPAC Recommendations 1995, detection limit of a blank-corrected signal (from memory, not checked against the print)': `IUPAC Recommendations 1995, Nachweisgrenze eines um den Blindwert berichtigten Signals (${memory})`,
  'loss by mass less moisture as in GB/T 3521, of the dry mass':
    'Masseverlust abzüglich Feuchte wie in GB/T 3521, bezogen auf die Trockenmasse',
  'definition of apparent density, as in ISO 3923-1 (from memory, not checked against the print)': `Definition der Fülldichte, wie in ISO 3923-1 (${memory})`,
  'definition of apparent density, as in ISO 3953 (from memory, not checked against the print)': `Definition der Klopfdichte, wie in ISO 3953 (${memory})`,
  'ASTM F36, definition of compressibility': 'ASTM F36, Definition der Kompressibilität',
  'ASTM F36, definition of recovery': 'ASTM F36, Definition der Rückfederung',
  'ASTM F36, definition of resiliency; S = C · R / (1 − C) follows from the three':
    'ASTM F36, Definition der elastischen Erholung; S = C · R / (1 − C) folgt aus den dreien',
  'linear temperature compensation as in ISO 7888; range of α from handbooks (from memory, not checked against the print)': `lineare Temperaturkompensation wie in ISO 7888; Bereich von α aus Handbüchern (${memory})`,
  'readings as in ASTM F38-95, method B, 8.2; relaxation as the part of the initial stress that is lost, 3.2 and 3.3':
    'Messung wie in ASTM F38-95, Verfahren B, 8.2; Relaxation als verlorener Teil der Anfangsspannung, 3.2 und 3.3',
  'GB 10698-89, definition of expansion volume': 'GB 10698-89, Definition des Blähvolumens',
  'definition of bulk density, by mass and dimensions as in ASTM F1315':
    'Definition der Rohdichte, aus Masse und Maßen wie in ASTM F1315',
  'definition of mass per area': 'Definition der Masse je Fläche',
  'ideal gas; mass per time and length as in DIN 28090-2, whose procedure was not seen':
    'ideales Gas; Masse je Zeit und Länge wie in DIN 28090-2, deren Prüfvorschrift nicht vorlag',
  'definition of porosity; crystal density of graphite 2.26 g/cm³, published X-ray values 2.261 to 2.267 g/cm³':
    'Definition der Porosität; Kristalldichte von Graphit 2,26 g/cm³, veröffentlichte Röntgenwerte 2,261 bis 2,267 g/cm³',
  'F. M. Smits, Bell System Technical Journal 37 (1958) 711 (from memory, not checked against the print)': `F. M. Smits, Bell System Technical Journal 37 (1958) 711 (${memory})`,
  'L. J. van der Pauw, Philips Research Reports 13 (1958) 1 (from memory, not checked against the print)': `L. J. van der Pauw, Philips Research Reports 13 (1958) 1 (${memory})`,
  'definition of resistivity, for a bar as in ASTM C611':
    'Definition des spezifischen Widerstands, für einen Stab wie in ASTM C611',
  'definition of conductivity': 'Definition der Leitfähigkeit',
  'sum of the pieces as measured': 'Summe der Stücke wie gemessen',
  'definition of the mean': 'Definition des Mittelwerts',
  'definition of the cumulative oversize, as in ISO 2591-1':
    'Definition der Rückstandssumme, wie in ISO 2591-1',
  'definition of the loss on sieving, as in ISO 2591-1':
    'Definition des Siebverlusts, wie in ISO 2591-1',
  'passing interpolated linearly in the logarithm of the aperture, between neighbouring sieves: common practice, no source; tolerance of apertures from ISO 3310-1':
    'Durchgang linear über dem Logarithmus der Maschenweite zwischen benachbarten Sieben interpoliert: übliche Praxis, keine Quelle; Grenzabweichung der Maschenweiten nach ISO 3310-1',
  'stress on the original cross-section, as in ASTM F152':
    'Spannung auf den Anfangsquerschnitt, wie in ASTM F152',
  'definition of force per width; no thickness is in it':
    'Definition der breitenbezogenen Kraft; eine Dicke geht nicht ein',
  'definition of thermal diffusivity': 'Definition der Temperaturleitfähigkeit',
  'L 5.4 to 6.6 · 10⁻⁶ W·Ω/K², between Nanomaterials 14 (2024) 1162 and Scientific Reports 10 (2020) 75393':
    'L 5,4 bis 6,6 · 10⁻⁶ W·Ω/K², zwischen Nanomaterials 14 (2024) 1162 und Scientific Reports 10 (2020) 75393',
  'plane of least squares through the readings, as the line of JCGM 100, H.3':
    'Ausgleichsebene der kleinsten Quadrate durch die Messwerte, wie die Gerade in JCGM 100, H.3',
  'definition of a part kept; no standard is known for it':
    'Definition eines erhaltenen Anteils; eine Norm dafür ist nicht bekannt',
  'volume after expansion over bulk volume before it':
    'Volumen nach dem Expandieren zum Schüttvolumen davor',
  'arithmetic mean of pH readings: common practice, no source':
    'arithmetisches Mittel der pH-Messungen: übliche Praxis, keine Quelle',
  'no standard known: the definition stands beside the figure':
    'keine Norm bekannt: Die Definition steht neben dem Wert'
}

export const formula = (text: OpenFormula): string => formulas[text]
export const source = (text: OpenSource): string => sources[text]
