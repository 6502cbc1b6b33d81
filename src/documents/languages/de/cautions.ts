/** Sentences, sources, issuers and agents of our data files on hazards in German, by what they are in English. */

const lines: Readonly<Record<string, string>> = {
  'It grows more than a hundredfold above its onset: keep it below the onset of its grade, and never heat it in a closed vessel, which bursts':
    'Oberhalb der Onset-Temperatur wächst er auf mehr als das Hundertfache: unter der Onset-Temperatur der Sorte halten und nie in einem geschlossenen Gefäß erhitzen, das dabei birst',
  'Expand it only under local exhaust, with a scrubber for acid gas':
    'Nur unter örtlicher Absaugung mit Wäscher für saure Gase expandieren',
  'The dust, and worms above all, conducts electricity and can short switchgear, motors and electronics: enclose them, raise no clouds, bond and ground vessels':
    'Der Staub, vor allem die expandierten Flocken, leitet Strom und kann Schaltanlagen, Motoren und Elektronik kurzschließen: diese kapseln, keinen Staub aufwirbeln, Gefäße verbinden und erden',
  'Take up dust with a vacuum cleaner made for combustible, conducting dust, never with compressed air':
    'Staub mit einem Sauger für brennbaren, leitfähigen Staub aufnehmen, nie mit Druckluft',
  'Graphite dust breathed in for years can lead to pneumoconiosis and fibrosis, in part for the silica in it':
    'Über Jahre eingeatmeter Graphitstaub kann zu Pneumokoniose und Fibrose führen, zum Teil wegen des darin enthaltenen Siliciumdioxids',
  'Strong oxidisers, such as nitric acid, nitrates, permanganates and concentrated hydrogen peroxide: they react violently with what burns':
    'Starke Oxidationsmittel wie Salpetersäure, Nitrate, Permanganate und konzentriertes Wasserstoffperoxid: Sie reagieren heftig mit Brennbarem',
  'Bases: they neutralise the acid it holds and give off heat':
    'Basen: Sie neutralisieren die enthaltene Säure und setzen Wärme frei',
  'Metals, where it is damp: the acid that leaches out can attack them':
    'Metalle bei Feuchte: Ausgelaugte Säure kann sie angreifen',
  'Sulfur dioxide when it is heated: at most 0.653 g for each gram of sulfuric acid in it, by 2\u00a0H₂SO₄\u00a0+ C\u00a0→ 2\u00a0SO₂\u00a0+ CO₂\u00a0+ 2\u00a0H₂O':
    'Schwefeldioxid beim Erhitzen: höchstens 0,653 g je Gramm enthaltener Schwefelsäure, nach 2\u00a0H₂SO₄\u00a0+ C\u00a0→ 2\u00a0SO₂\u00a0+ CO₂\u00a0+ 2\u00a0H₂O',
  'Sulfur trioxide and acid mist when it is heated, from 160 to 250 °C on':
    'Schwefeltrioxid und Säurenebel beim Erhitzen, ab 160 bis 250 °C',
  'Nitrogen oxides when it is heated, where it was made with nitrate or nitric acid: symptoms may be delayed by hours':
    'Stickoxide beim Erhitzen, falls mit Nitrat oder Salpetersäure hergestellt: Beschwerden können erst nach Stunden auftreten',
  'Carbon monoxide and carbon dioxide where it burns':
    'Kohlenmonoxid und Kohlendioxid, wo er brennt',
  'Tell whoever takes it as waste that it expands when heated, gives off acid gas and conducts electricity':
    'Wer ihn als Abfall annimmt, muss wissen, dass er sich beim Erhitzen ausdehnt, saures Gas abgibt und Strom leitet',
  'Water that rinsed it is acid: neutralise it slowly, measure the pH, and discharge it only where a permit allows it':
    'Spülwasser ist sauer: langsam neutralisieren, den pH-Wert messen und nur einleiten, wo eine Genehmigung es erlaubt',
  'Dust and offcuts conduct electricity and can short switchgear, motors and electronics: cut it away from them, and take dust up at once':
    'Staub und Verschnitt leiten Strom und können Schaltanlagen, Motoren und Elektronik kurzschließen: abseits davon schneiden und Staub sofort aufnehmen',
  'Strong oxidisers, such as nitric acid, chromic acid and molten nitrates: they attack graphite, hot ones violently':
    'Starke Oxidationsmittel wie Salpetersäure, Chromsäure und geschmolzene Nitrate: Sie greifen Graphit an, heiße heftig',
  'Metals in damp service: graphite is the nobler partner and makes them corrode':
    'Metalle bei Einsatz im Feuchten: Graphit ist der edlere Partner und lässt sie korrodieren',
  'Sulfur dioxide when it is first heated, from what is left of the acid the flake was made with':
    'Schwefeldioxid beim ersten Erhitzen, aus Resten der Säure, mit der die Flocken hergestellt wurden',
  'Carbon monoxide and carbon dioxide where it burns in air, at red heat':
    'Kohlenmonoxid und Kohlendioxid, wo sie bei Rotglut an Luft brennt',
  'Tell whoever takes offcuts and dust as waste that they conduct electricity; keep them out of electronics scrap':
    'Wer Verschnitt und Staub als Abfall annimmt, muss wissen, dass sie Strom leiten; nicht zum Elektronikschrott geben'
}

const sources: Readonly<Record<string, string>> = {
  'joint registration of EC 235-819-4: decomposes above 180 °C, acid leaves from 160 °C on':
    'gemeinsame Registrierung von EG 235-819-4: zersetzt sich über 180 °C, Säure entweicht ab 160 °C',
  'joint registration of EC 235-819-4': 'gemeinsame Registrierung von EG 235-819-4',
  'common practice, no source': 'übliche Praxis, keine Quelle',
  'common practice, no source; local law decides':
    'übliche Praxis, keine Quelle; örtliches Recht entscheidet',
  'NIOSH and OSHA, notes on graphite': 'NIOSH und OSHA, Hinweise zu Graphit',
  'International Chemical Safety Card of nitric acid; P220, CLP Annex IV':
    'Internationale Stoffsicherheitskarte (ICSC) der Salpetersäure; P220, CLP Anhang IV',
  'International Chemical Safety Card 0930, of the delay; else common practice, no source':
    'Internationale Stoffsicherheitskarte (ICSC) 0930, zur Verzögerung; sonst übliche Praxis, keine Quelle',
  stoichiometry: 'Stöchiometrie',
  "Directive 2009/161/EU, as the European Chemicals Agency's list of limit values prints it":
    'Richtlinie 2009/161/EU, wie in der Grenzwertliste der Europäischen Chemikalienagentur',
  'Directive (EU) 2017/164': 'Richtlinie (EU) 2017/164',
  'Directive (EU) 2017/2398 (binding)': 'Richtlinie (EU) 2017/2398 (verbindlich)',
  'Directive 2006/15/EC': 'Richtlinie 2006/15/EG',
  "as in force in May 1994 by NIOSH's documentation for IDLH values":
    'Stand Mai 1994 nach der NIOSH-Dokumentation der IDLH-Werte',
  'NIOSH, documentation for IDLH values, May 1994': 'NIOSH, Dokumentation der IDLH-Werte, Mai 1994',
  'NIOSH, value profile of nitrogen dioxide, 2017': 'NIOSH, Wertprofil von Stickstoffdioxid, 2017',
  'NIOSH pocket guide': 'NIOSH-Taschenbuch',
  'OSHA, chemical sampling information on sulfur dioxide':
    'OSHA, Angaben zur Probenahme von Schwefeldioxid',
  '29 CFR 1910.1000 Table Z-1': '29 CFR 1910.1000 Tabelle Z-1',
  '29 CFR 1910.1000 Table Z-1, as NIOSH quotes it':
    '29 CFR 1910.1000 Tabelle Z-1, wie von NIOSH zitiert',
  '29 CFR 1910.1053': '29 CFR 1910.1053'
}

const issuers: Readonly<Record<string, string>> = {
  'European Union, Directive 2009/161/EU': 'Europäische Union, Richtlinie 2009/161/EU',
  'European Union, Directive (EU) 2017/164': 'Europäische Union, Richtlinie (EU) 2017/164',
  'European Union, Directive (EU) 2017/2398': 'Europäische Union, Richtlinie (EU) 2017/2398',
  'European Union, Directive 2006/15/EC': 'Europäische Union, Richtlinie 2006/15/EG',
  'OSHA, 29 CFR 1910.1000 Table Z-1': 'OSHA, 29 CFR 1910.1000 Tabelle Z-1',
  'OSHA, 29 CFR 1910.1000 Table Z-3': 'OSHA, 29 CFR 1910.1000 Tabelle Z-3',
  'OSHA, 29 CFR 1910.1053': 'OSHA, 29 CFR 1910.1053',
  'NIOSH, recommended limit': 'NIOSH, empfohlener Grenzwert',
  'NIOSH, immediately dangerous to life or health':
    'NIOSH, unmittelbar gefährlich für Leben oder Gesundheit'
}

const agents: Readonly<Record<string, string>> = {
  'sulfuric acid, mist': 'Schwefelsäure, Nebel',
  'nitrogen dioxide': 'Stickstoffdioxid',
  'nitrogen monoxide': 'Stickstoffmonoxid',
  'sulfur dioxide': 'Schwefeldioxid',
  quartz: 'Quarz',
  'graphite dust': 'Graphitstaub',
  'carbon dioxide': 'Kohlendioxid',
  'thoracic fraction': 'thorakale Fraktion',
  'respirable fraction': 'alveolengängige Fraktion',
  'natural graphite': 'Naturgraphit',
  'natural graphite, respirable dust': 'Naturgraphit, alveolengängiger Staub',
  'synthetic graphite, total dust': 'synthetischer Graphit, Gesamtstaub',
  'million particles per cubic foot': 'Millionen Teilchen je Kubikfuß'
}

export const cautions: Readonly<Record<string, string>> = {
  ...lines,
  ...sources,
  ...issuers,
  ...agents
}
