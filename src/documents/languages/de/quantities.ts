/** Quantities of products in German. */

import type { ProductName, QuantityWords } from '../quantity-words.ts'

export const product: Readonly<Record<ProductName, QuantityWords>> = {
  expansionVolume_mL_per_g: {
    title: 'Blähvolumen',
    meaning: 'Volumen der expandierten Flocken je Gramm Blähgraphit vor dem Expandieren'
  },
  expansionRatio: {
    title: 'Blähverhältnis',
    meaning: 'Volumen nach dem Expandieren zum Schüttvolumen davor; es ist nicht das Blähvolumen'
  },
  freeAcid_percent: {
    title: 'Freie Säure als H₂SO₄',
    meaning:
      'auslaugbare Säure, titriert und als Schwefelsäure angegeben; eingelagerte Säure ist nicht enthalten'
  },
  freeAcid_mmol_per_g: {
    title: 'Freie Säure als H⁺',
    meaning: 'Stoffmenge der Wasserstoffionen, die aus einem Gramm auslaugt'
  },
  slurryPH: {
    title: 'pH-Wert der Aufschlämmung',
    meaning: 'pH-Wert des Filtrats einer Aufschlämmung in Wasser'
  },
  moisture_percent: {
    title: 'Feuchte',
    meaning: 'Trocknungsverlust, bezogen auf die Masse im Anlieferungszustand'
  },
  volatile_percent: {
    title: 'Flüchtige Bestandteile, wasserfrei',
    meaning: 'Verlust im angegebenen Ofenprogramm, bezogen auf die Trockenmasse'
  },
  ash_percent: {
    title: 'Asche, wasserfrei',
    meaning: 'Rückstand nach dem Verbrennen, bezogen auf die Trockenmasse'
  },
  fixedCarbon_percent: {
    title: 'Fixer Kohlenstoff als Differenz, wasserfrei',
    meaning:
      '100 % abzüglich Asche und flüchtiger Bestandteile; eingelagerte Säure zählt als flüchtig'
  },
  devolatilisedCarbon_percent: {
    title: 'Kohlenstoff, ohne flüchtige Bestandteile',
    meaning: '100 % abzüglich Asche, bezogen auf das, was ohne die flüchtigen Bestandteile bleibt'
  },
  retained500_percent: {
    title: 'Rückstand auf 500 µm (35 mesh)',
    meaning:
      'Masse auf dem Sieb Nr. 35 nach ASTM E11 und allen gröberen, bezogen auf die Summe der Fraktionen'
  },
  retained300_percent: {
    title: 'Rückstand auf 300 µm (50 mesh)',
    meaning:
      'Masse auf dem Sieb Nr. 50 nach ASTM E11 und allen gröberen, bezogen auf die Summe der Fraktionen'
  },
  retained180_percent: {
    title: 'Rückstand auf 180 µm (80 mesh)',
    meaning:
      'Masse auf dem Sieb Nr. 80 nach ASTM E11 und allen gröberen, bezogen auf die Summe der Fraktionen'
  },
  retained150_percent: {
    title: 'Rückstand auf 150 µm (100 mesh)',
    meaning:
      'Masse auf dem Sieb Nr. 100 nach ASTM E11 und allen gröberen, bezogen auf die Summe der Fraktionen'
  },
  retained75_percent: {
    title: 'Rückstand auf 75 µm (200 mesh)',
    meaning:
      'Masse auf dem Sieb Nr. 200 nach ASTM E11 und allen gröberen, bezogen auf die Summe der Fraktionen'
  },
  d10_um: {
    title: 'Siebgröße d10',
    meaning: 'Korngröße, unter der 10 % der Masse liegen, zwischen den Sieben interpoliert'
  },
  d50_um: {
    title: 'Siebgröße d50',
    meaning: 'Korngröße, unter der 50 % der Masse liegen, zwischen den Sieben interpoliert'
  },
  d90_um: {
    title: 'Siebgröße d90',
    meaning: 'Korngröße, unter der 90 % der Masse liegen, zwischen den Sieben interpoliert'
  },
  d97_um: {
    title: 'Oberkorn d97',
    meaning: 'Korngröße, unter der 97 % der Masse liegen, zwischen den Sieben interpoliert'
  },
  sieveLoss_percent: {
    title: 'Siebverlust',
    meaning: 'aufgegebene Masse, die danach auf keinem Sieb und in keiner Schale lag'
  },
  looseDensity_g_per_mL: {
    title: 'Schüttdichte',
    meaning: 'Masse der in ein Gefäß geschütteten Flocken durch das Volumen, das sie darin füllen'
  },
  tappedDensity_g_per_mL: {
    title: 'Stampfdichte',
    meaning: 'dasselbe, nachdem bis zum Ende des Setzens gestampft wurde'
  },
  sulfur_percent: {
    title: 'Gesamtschwefel',
    meaning: 'aller Schwefel des Produkts, eingelagert oder frei, im Anlieferungszustand'
  },
  acidEquivalent_percent: {
    title: 'Gesamtschwefel als H₂SO₄',
    meaning: 'derselbe Schwefel als Schwefelsäure angegeben; es ist nicht die freie Säure'
  },
  freeSulfate_percent: {
    title: 'Freies Sulfat als SO₄²⁻',
    meaning: 'mit Wasser auslaugbares Sulfat, im Anlieferungszustand'
  },
  conductivity_uS_per_cm: {
    title: 'Leitfähigkeit der Aufschlämmung bei 25 °C',
    meaning: 'Leitfähigkeit des Filtrats einer Aufschlämmung abzüglich der des Wassers, bei 25 °C'
  },
  onset_C: {
    title: 'Onset-Temperatur',
    meaning: 'Temperatur, bei der das Blähen nach der angegebenen Definition beginnt'
  },
  expansionAt400_mL_per_g: {
    title: 'Blähvolumen bei 400 °C',
    meaning: 'Volumen der expandierten Flocken je Gramm, aus einem Ofen von 400 °C'
  },
  expansionAt600_mL_per_g: {
    title: 'Blähvolumen bei 600 °C',
    meaning:
      'Volumen der expandierten Flocken je Gramm bei 600 °C, nahe dem, was eine Beschichtung im Brand erfährt: die Brandkurve der ISO 834-1 ist nach 6 Minuten dort'
  },
  expansionAt800_mL_per_g: {
    title: 'Blähvolumen bei 800 °C',
    meaning: 'Volumen der expandierten Flocken je Gramm, aus einem Ofen von 800 °C'
  },
  soakedExpansion_mL_per_g: {
    title: 'Blähvolumen nach Wasserlagerung',
    meaning: 'Volumen der expandierten Flocken je Gramm, nach Lagerung in Wasser und Trocknen'
  },
  soakKept_percent: {
    title: 'Nach Wasserlagerung erhaltenes Blähvermögen',
    meaning: 'Blähvolumen nach der Wasserlagerung, bezogen auf das davor'
  },
  crystallineSilica_percent: {
    title: 'Kristallines Siliciumdioxid',
    meaning:
      'Quarz und verwandte Formen, bezogen auf die Masse des Produkts; der alveolengängige Anteil ist kleiner'
  },
  thickness_mm: { title: 'Dicke', meaning: 'Mittelwert der Messungen über einen Bogen' },
  taperAlong_mm: {
    title: 'Keiligkeit in Längsrichtung',
    meaning: 'Zunahme der Dicke von einem Ende zum anderen, aus der Ebene durch die Messwerte'
  },
  taperAcross_mm: {
    title: 'Keiligkeit in Querrichtung',
    meaning: 'dasselbe von einer Kante zur anderen'
  },
  arealMass_g_per_m2: { title: 'Flächengewicht', meaning: 'Masse eines Bogens je Fläche' },
  foilDensity_g_per_cm3: {
    title: 'Foliendichte',
    meaning: 'Rohdichte eines Bogens nach dem Pressen: Masse durch Länge, Breite und Dicke'
  },
  porosity_percent: {
    title: 'Porosität',
    meaning: 'Anteil des Bogens, der nicht Graphit ist, aus seiner Dichte und der des Kristalls'
  },
  tensileAlong_MPa: {
    title: 'Zugfestigkeit längs',
    meaning: 'Höchstkraft durch den ursprünglichen Querschnitt, in Formgebungsrichtung gezogen'
  },
  tensileAcross_MPa: {
    title: 'Zugfestigkeit quer',
    meaning: 'dasselbe, quer zur Formgebungsrichtung gezogen'
  },
  forceAlong_N_per_mm: {
    title: 'Breitenbezogene Höchstkraft längs',
    meaning: 'Höchstkraft durch die Breite, in die kein Fehler der Dicke eingeht'
  },
  forceAcross_N_per_mm: {
    title: 'Breitenbezogene Höchstkraft quer',
    meaning: 'dasselbe, quer zur Formgebungsrichtung gezogen'
  },
  compressibility_percent: {
    title: 'Kompressibilität',
    meaning: 'Dickenabnahme unter der Gesamtlast, bezogen auf die Dicke unter der Vorlast'
  },
  recovery_percent: {
    title: 'Rückfederung',
    meaning: 'Anteil der Zusammendrückung, der nach dem Entlasten zurückgeht'
  },
  resiliency_percent: {
    title: 'Elastische Erholung',
    meaning: 'Dickenzunahme beim Entlasten, bezogen auf die Dicke unter der Last'
  },
  sheetResistance_mOhm: {
    title: 'Flächenwiderstand, vier Spitzen',
    meaning: 'Widerstand eines Quadrats beliebiger Größe, mit vier Spitzen in einer Reihe'
  },
  vanDerPauw_mOhm: {
    title: 'Flächenwiderstand nach van der Pauw',
    meaning: 'Widerstand eines Quadrats beliebiger Größe, mit Kontakten am Rand eines Stücks'
  },
  resistivity_uOhmm: {
    title: 'Spezifischer Widerstand eines Streifens',
    meaning: 'Widerstand in Vierleitermessung mal Querschnitt durch Länge'
  },
  foilConductivity_kS_per_m: {
    title: 'Elektrische Leitfähigkeit eines Streifens',
    meaning: 'Kehrwert des spezifischen Widerstands'
  },
  leachableChloride_mg_per_kg: {
    title: 'Auslaugbares Chlorid',
    meaning: 'mit Wasser auslaugbares Chlorid; Gesamtchlor ist eine andere, größere Angabe'
  },
  leachableFluoride_mg_per_kg: {
    title: 'Auslaugbares Fluorid',
    meaning: 'mit Wasser auslaugbares Fluorid; Gesamtfluor ist eine andere, größere Angabe'
  },
  leachableAcid_percent: {
    title: 'Auslaugbare Säure als H₂SO₄',
    meaning: 'mit Wasser aus der Folie auslaugbare Säure, als Schwefelsäure angegeben'
  },
  oxidationLoss_percent: {
    title: 'Oxidationsverlust',
    meaning:
      'Masseverlust in heißer Luft, bezogen auf die Trockenmasse, bei der angegebenen Temperatur und Dauer'
  },
  creepRelaxation_percent: {
    title: 'Kriechrelaxation',
    meaning: 'Anteil der Verspannkraft, der bei der angegebenen Temperatur und Dauer verloren geht'
  },
  leakRate_mg_per_sm: {
    title: 'Gasleckrate',
    meaning: 'Masse des angegebenen Gases, die je Zeit und mittlerem Umfang eines Rings entweicht'
  },
  thermalConductivity_W_per_mK: {
    title: 'Wärmeleitfähigkeit in der Ebene',
    meaning:
      'Wärme, die den Bogen entlangfließt, aus Temperaturleitfähigkeit, Dichte und Wärmekapazität'
  },
  thermalEstimate_W_per_mK: {
    title: 'Wärmeleitfähigkeit in der Ebene, nur geschätzt',
    meaning: 'aus der elektrischen Leitfähigkeit eines Streifens geschätzt, nicht gemessen'
  },
  rollLength_m: {
    title: 'Rollenlänge',
    meaning: 'alle Stücke der Rolle zusammen, von Stoß zu Stoß'
  },
  rollWidth_mm: {
    title: 'Rollenbreite',
    meaning: 'Mittelwert über mehrere Stellen entlang der Rolle'
  },
  totalChlorine_mg_per_kg: {
    title: 'Gesamtchlor',
    meaning: 'alles vorhandene Chlor, auslaugbar oder nicht'
  },
  totalFluorine_mg_per_kg: {
    title: 'Gesamtfluor',
    meaning: 'alles vorhandene Fluor, auslaugbar oder nicht'
  },
  totalHalogen_mg_per_kg: {
    title: 'Gesamthalogen',
    meaning: 'Fluor, Chlor, Brom und Iod zusammen, jedes mit seiner eigenen Masse'
  },
  gasketFactorM: {
    title: 'Dichtungsbeiwert m',
    meaning: 'Pressung der Dichtung im Betrieb durch den Innendruck, zur Berechnung eines Flansches'
  },
  gasketStressY_MPa: {
    title: 'Vorverformungspressung y',
    meaning: 'Pressung, unter der sich die Dichtung anlegt, zur Berechnung eines Flansches'
  }
}
