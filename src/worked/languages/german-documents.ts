// German: the words of documents.
import type { DocumentWords } from './document-words.js';

export const GERMAN_DOCUMENTS: DocumentWords = {
  outcomes: {
    'gas not known': 'Gas nicht bekannt',
    'not comparable': 'nicht vergleichbar',
    'gas side empty': 'Gasseite leer',
    'gauge too coarse': 'Manometer zu grob',
    undercharged: 'zu wenig Gas',
    overcharged: 'zu viel Gas',
    within: 'im Band',
  },
  decisions: {
    within: 'im Band',
    undercharged: 'zu wenig Gas',
    overcharged: 'zu viel Gas',
    inconclusive: 'nicht entscheidbar',
    'no decision': 'keine Entscheidung',
  },
  states: { 'in order': 'in Ordnung', 'work needed': 'Arbeit nötig', 'read again': 'nochmals ablesen' },
  stakes: {
    danger: 'Gefahr',
    'gas side empty': 'Gasseite leer',
    'outside the band': 'außerhalb des Bandes',
    'not known': 'nicht bekannt',
    inconclusive: 'nicht entscheidbar',
    'in order': 'in Ordnung',
  },
  acceptances: {
    'simple acceptance': 'einfache Annahme',
    'guarded acceptance': 'abgesicherte Annahme',
    'guarded rejection': 'abgesicherte Ablehnung',
    'guarded both ways': 'Absicherung nach beiden Seiten',
  },
  separators: { diaphragm: 'Membran', bladder: 'Blase', piston: 'Kolben' },
  applies: {
    'at the measured temperature': 'bei der gemessenen Temperatur',
    'at the reference temperature': 'bei der Bezugstemperatur',
  },
  targetBy: {
    'constant density from the reference point': 'feste Dichte vom Bezugspunkt aus',
    table: 'die Tabelle des Herstellers',
    'constant density from the nearest row': 'feste Dichte von der nächsten Zeile der Tabelle des Herstellers aus',
  },
  because: {
    'not a report': 'dies ist kein Bericht der Form, die diese Bibliothek schreibt',
    'digest does not match': 'die Prüfsumme stimmt nicht: der Bericht wurde geändert, nachdem er gemacht war',
    'other schema version': 'der Bericht hat eine andere Version des Schemas, als diese Bibliothek schreibt',
    'other library version': 'eine andere Version der Bibliothek hat geurteilt als diese',
    'other model': 'ein anderes Gasmodell wurde verwendet',
    'no input': 'der Bericht enthält seine Runde nicht, so dass sie nicht nochmals beurteilt werden kann',
    'another result':
      'dieselbe Eingabe gibt mit derselben Version und demselben Modell ein anderes Ergebnis: eine gefälschte Prüfsumme ' +
      'oder ein Fehler',
  },
  values: { 'not known': 'nicht bekannt', 'none in range': 'keine im Bereich' },
  provenance: 'isochore {version}',
  model: 'Gasmodell {model}: {citation}',
  card: {
    title: 'Einstellkarte: Stickstoff-Vorfülldruck',
    titled: 'Einstellkarte: Stickstoff-Vorfülldruck von {name}',
    use:
      'Bei entleerter, druckloser Ölseite und nach {minutes} min Ruhe von Öl und Gas Druck und Temperatur der Behälterwand ' +
      'ablesen. In die Zeile der Temperatur gehen; zwischen zwei Zeilen liegt der Druck zwischen den ihren.',
    tableHeading: 'Druck am Manometer über der Temperatur',
    ambient:
      'Überdrücke in {unit}, bei einem Umgebungsdruck von {ambient}, auf die Teilstriche eines auf {step} abgelesenen ' +
      'Manometers.',
    temperature: 'Gastemperatur [{unit}]',
    target: 'Sollwert [{unit}]',
    lower: 'untere Grenze [{unit}]',
    upper: 'obere Grenze [{unit}]',
    noMark: 'kein Teilstrich',
    beyondTable:
      'Jenseits der Zeilen der Tabelle des Herstellers, mit fester Dichte von ihrer nächsten Zeile aus: {rows}.',
    validityHeading: 'Wofür sie gilt',
    point: 'Vorfülldruck: {pressure} bei {temperature}',
    byTable: 'Vorfülldruck: nach der Tabelle des Herstellers, von {first} bis {last}, Bezugstemperatur {temperature}',
    statedAmbient: 'Umgebungsdruck, den die Vorgabe meint: {ambient}',
    tolerance: 'Erlaubt: {below} unter und {above} über dem Sollwert, {applies}',
    percent: 'Erlaubt: {percent} % des Überdrucks unter und über dem Sollwert, {applies}',
    limits: 'Erlaubt: vom Minimum bis zum Maximum, die die Vorgabe nennt',
    separator: 'Trennelement: {separator}',
    volume: 'Gasvolumen bei entleerter Ölseite: {volume}',
    allowable: 'Zulässiger Druck: {allowable}',
    settling: 'Füllen höchstens {allowance} über den Sollwert; {minutes} min warten, nochmals ablesen',
    model: 'Das Gasmodell {model} gilt von {from} bis {to} und bis {pressure}',
    rounding: 'Der Sollwert ist auf den nächsten Teilstrich gerundet, die Grenzen sind nach innen gerundet',
    otherAmbient:
      'Ein anderer Umgebungsdruck verschiebt jeden Druck der Tabelle um ebenso viel, in die andere Richtung',
    disagreements:
      'Tabelle und Nennpunkt des Herstellers unterscheiden sich um mehr als den gedruckten Schritt bei: {rows}',
    cautionsHeading: 'Sicherheitshinweise',
    provenanceHeading: 'Woher sie kommt',
    manual: 'Vorgabe: {source}',
  },
  round: {
    title: 'Prüfung des Stickstoff-Vorfülldrucks',
    summaryHeading: 'Zusammenfassung',
    complete: 'Die ganze Runde wurde beurteilt.',
    partial: 'EIN TEIL DER RUNDE KONNTE NICHT BEURTEILT WERDEN.',
    judged: 'Beurteilte Speicher: {judged}; nicht beurteilt: {notJudged}.',
    found: 'Vorgefunden: {counts}.',
    nothingFound: 'nichts entschieden',
    rule:
      'Mit der Unsicherheit der Messgeräte, nach der Regel „{rule}“ (Risiko höchstens {below} unter dem Band, {above} ' +
      'darüber): {counts}.',
    problemsHeading: 'Fehler im Dokument ({count})',
    problem: '{path}: gefunden {found}, erwartet {wanted}; {remedy}',
    more: 'und {count} weitere',
    notJudged: 'Nicht beurteilt: {name} ({path})',
    cautionsHeading: 'Sicherheitshinweise',
    cautionFor: 'Bei {names}.',
    togetherHeading: 'Die Runde als Ganzes, Manometer für Manometer',
    tooFew:
      '{gauge}: {counting} von {readings} Ablesungen zählen; {needed} sind nötig, um einen gemeinsamen Fehler von einzelnen ' +
      'zu unterscheiden.',
    noShift: '{gauge}: keine gemeinsame Verschiebung; {counting} von {readings} Ablesungen zählen.',
    shift:
      '{gauge}: die Ablesungen weichen gemeinsam um {difference} ab, um den Faktor {ratio}, oder wie bei Gas, das um ' +
      '{temperature} wärmer ist als gemessen; {explains} von {counting} folgen; die angegebene Genauigkeit {instruments}.',
    perhaps: 'Vielleicht {slip}.',
    compare: 'Manometer und Thermometer mit anderen vergleichen, bevor an einem einzelnen Speicher gearbeitet wird.',
    byThemselves: 'Für sich abweichend: {names}.',
    instrumentsShift: {
      'can explain it': 'kann es erklären',
      'cannot explain it': 'kann es nicht erklären',
      'not stated': 'ist nicht bekannt',
    },
    tableHeading: 'Was vorgefunden wurde',
    tableOf: '{group}; Vorgabe: {specifications}; Umgebungsdruck: {ambients}',
    columns: {
      accumulator: 'Speicher',
      unit: 'versorgte Einheit',
      read: 'Überdruck abgelesen',
      temperature: 'bei Gastemperatur',
      target: 'Sollwert dort (Überdruck)',
      allowed: 'erlaubt an diesem Manometer',
      off: 'Abweichung',
      outcome: 'vorgefunden',
      state: 'Zustand',
    },
    offNote: 'Abweichung: Ablesung weniger Sollwert, eine Differenz, in der Einheit der Ablesung.',
    intervalNote: '± worin die wahre Differenz mit einer Wahrscheinlichkeit von {coverage} liegt.',
    groupTemperature: '* einmal für die Gruppe angegeben, nicht an diesem Speicher gemessen.',
    uncertaintyNote: '† beurteilt wie abgelesen, ohne Unsicherheit: nicht alles ist angegeben, worauf sie beruht.',
    asLeft: '{state} (wie verlassen)',
    to: '{lower} bis {upper} {unit}',
    workHeading: 'Was zu tun ist, das Schlimmste zuerst',
    nothingToDo: 'Nichts: jeder beurteilte Speicher ist in Ordnung.',
    nothingJudged: 'Kein Speicher wurde beurteilt.',
    unit: '{unit}: {stake}',
    noUnit: 'versorgte Einheit nicht angegeben',
    add: '{mass} Stickstoff nachfüllen ({volume}).',
    vent: '{mass} Stickstoff ablassen ({volume}).',
    stop: 'Bei {mark} aufhören, schließen, {minutes} min warten, nochmals ablesen.',
    noMark: 'Kein Teilstrich des Manometers zum Aufhören.',
    noStop: 'Kein Abschaltdruck: {why}.',
    next: {
      'gas not known':
        'Nichts nachfüllen; herausfinden, was das Gas ist, oder es ersetzen lassen, dann nochmals ablesen.',
      'not comparable':
        'Weder nachfüllen noch ablassen; sichern, absperren, entleeren, auf null prüfen, warten, dann nochmals ablesen.',
      'beyond the scale':
        'Weder nachfüllen noch ablassen; herausfinden, was an welchem Manometer in welcher Einheit abgelesen wurde, dann ' +
        'nochmals ablesen.',
      'gas side empty':
        'Nicht füllen; die Ursache finden und beheben, angeben, dass sie behoben ist, dann nochmals ablesen.',
      'gauge too coarse': 'An einem feineren Manometer nochmals ablesen.',
    },
    meant: 'Das Messgerät nochmals ansehen: {slips}: es wäre dann {outcome}.',
    inconclusive:
      'Nicht entscheidbar: zu wenig Gas mit einer Wahrscheinlichkeit von {below}, zu viel mit {above}; der größte Teil des ' +
      'Zweifels: {largest}.',
    settle:
      'Weder nachfüllen noch ablassen; nochmals ablesen, und eines davon würde dieselbe Ablesung entscheiden: {ways}.',
    lacking: 'Ohne Unsicherheit: {lacking}.',
    left: 'Wie verlassen, {outcome}: {why}',
    cause: 'Vielleicht: {causes}.',
    gasHeading: 'Stickstoff',
    gasFound: 'Nachzufüllen wie vorgefunden',
    gasStill: 'Nach der Arbeit noch nachzufüllen',
    gasNone: '{what}: nichts.',
    losses: 'Verluste an Schläuchen und bei Prüfungen kommen hinzu.',
    ofThePart: 'Nur für den beurteilten Teil.',
    instrumentsHeading: 'Messgeräte',
    instrument: 'Messgerät',
    kind: 'Art',
    certificate: 'Kalibrierschein',
    due: 'fällig',
    remarksHeading: 'Bemerkungen',
    workingHeading: 'Der Rechengang',
    workingOf: '{accumulator}, wie vorgefunden',
    noWorking: 'Der Bericht enthält seine Runde nicht, so dass seine Ergebnisse nicht nachgerechnet werden können.',
    signaturesHeading: 'Unterschriften',
    readBy: 'Abgelesen von',
    verifiedBy: 'Geprüft von',
    provenanceHeading: 'Woher es kommt',
    judgedBy: 'Beurteilt von isochore {version}; Version des Berichts {report}.',
    digest: 'SHA-256 des Berichts: {digest}',
    judgedAgain: 'Für dieses Dokument von isochore {version} nochmals beurteilt, mit denselben Ergebnissen.',
    notAgain:
      'So, wie er ist, nicht zu verwenden: {because}. Worte und Zahlen sind die des Berichts, wie er übergeben wurde.',
    fields: ['Name', 'Unterschrift', 'Datum'],
  },
};
