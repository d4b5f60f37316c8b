// German: what can be wrong with quantities, gas, readings, specifications and calls. What stands in braces is filled in as
// the library writes it: names of fields, words and functions of the interface stay as a program has to spell them.
import type { ProblemText } from '../../basis/problem.js';

const SEE_README = 'siehe „A round as JSON“ in der README';

export const GERMAN_PROBLEMS = {
  'wrong kind': { wanted: '{kind}', remedy: '{maker} verwenden' },
  'gauge for absolute': {
    wanted: 'ein Absolutdruck',
    remedy: 'toAbsolute(pressure, ambient) rechnet ihn um',
  },
  'absolute for gauge': { wanted: 'ein Überdruck', remedy: 'toGauge(pressure, ambient) rechnet ihn um' },
  'unchecked copy': {
    wanted: '{kind}',
    remedy:
      'eine Kopie durch Spread, JSON oder structuredClone hat ihre Prüfung verloren: readmit(copy) bringt sie zurück',
  },
  'unchecked specification': {
    wanted: 'eine Vorgabe',
    remedy: 'eine Kopie hat ihre Prüfung verloren: mit specification(given) neu machen',
  },
  'operator on a quantity': {
    wanted: 'eine Funktion, die die Art der Größe kennt',
    remedy:
      'difference(), shift(), compare() oder ratio() verwenden, und für eine Liste sort(compare); write() oder JSON.stringify() gibt einen Text, valueIn(quantity, unit) eine bloße Zahl',
  },
  'not a number': {
    wanted: 'eine endliche Zahl',
    remedy: 'den Wert angeben, wie er abgelesen wurde; gibt es keinen, die Ablesung weglassen',
  },
  'text for a number': {
    wanted: 'eine endliche Zahl',
    remedy: 'ein Text geht durch read(kind, text), das ihn prüft',
  },
  'beyond double': {
    wanted: 'eine Größe, die ein double in {unit} fasst',
    remedy: 'den Wert prüfen; eine solche Größe gibt es nicht',
  },
  'not a decimal': {
    wanted: 'eine Dezimalzahl wie 141.3, mit höchstens {most} Zeichen',
    remedy:
      'Ziffern schreiben, einen Dezimalpunkt (kein Komma) mit Ziffern auf beiden Seiten, keine Gruppen; ein Exponent ist ' +
      'erlaubt',
  },
  'not a quantity': {
    wanted: '{form}, für {kind}',
    remedy: 'dies und nichts anderes schreiben, durch Leerzeichen getrennt',
  },
  'unknown unit': {
    wanted: 'eine von {units}',
    remedy: 'die Einheit genau so schreiben, ohne gauge oder absolute darin: die Bezugsbasis wird getrennt angegeben',
  },
  'below absolute zero': {
    wanted: 'mindestens -273.15 °C (0 K)',
    remedy: 'Vorzeichen und Einheit prüfen: °C, K oder °F',
  },
  'below vacuum': {
    wanted: 'mindestens 0 Pa absolut',
    remedy: 'ein Absolutdruck zählt vom Vakuum an; ist dies ein Überdruck, das angeben',
  },
  'gauge below vacuum': {
    wanted: 'mindestens {least} Überdruck (Vakuum, bei einem Umgebungsdruck von {ambient} absolut)',
    remedy: 'Vorzeichen, Einheit und Umgebungsdruck prüfen',
  },
  'not positive': {
    wanted: 'mehr als null',
    remedy: 'Wert, Vorzeichen und Einheit prüfen; wo es keinen gibt, lässt sich nichts an seiner Stelle sagen',
  },
  negative: { wanted: 'null oder mehr', remedy: 'eine Größe angeben, keinen Wert mit Vorzeichen' },
  'ratio to zero': { wanted: 'mehr als null', remedy: 'ein Verhältnis zu null hat keinen Wert' },
  'not a step': {
    wanted: 'eine endliche Zahl größer als null',
    remedy: 'den kleinsten Teil der Skale angeben, etwa 1, 0.5 oder 0.1',
  },
  'step too fine': { wanted: 'ein Wert von weniger als 10^12 Schritten', remedy: 'die Einheit des Schritts prüfen' },
  'unknown word': {
    wanted: '{words}',
    remedy: 'mit genau einem dieser Wörter angeben, was entschieden oder festgestellt wurde',
  },
  'not a copy of a quantity': {
    wanted: 'Art und SI-Wert einer Größe, wie JSON.stringify sie schreibt',
    remedy: 'übergeben, was JSON.parse, structuredClone oder Spread aus einer Größe machte, ohne etwas hinzuzufügen',
  },
  'outside the model': {
    wanted: '{range}, wo das Modell {model} gilt',
    remedy: 'Wert und Einheit prüfen; dort endet das Modell: {reason}',
  },
  liquid: {
    wanted: 'Gas: {range}',
    remedy: 'dort ist es flüssig oder gefroren: Wert und Einheit prüfen; diese Bibliothek antwortet nur für Gas',
  },
  'two phases': {
    wanted: 'Gas: {range}',
    remedy: 'dort stehen Flüssigkeit und Dampf nebeneinander; diese Bibliothek antwortet nur für Gas',
  },
  'no solution': {
    wanted: 'ein Zustand, den das Modell {model} lösen kann',
    remedy: 'innerhalb der Grenzen des Modells sollte das nicht vorkommen: bitte mit diesen Zahlen melden',
  },
  'no saturation': {
    wanted: 'eine Temperatur, bei der das Modell Flüssigkeit und Dampf hat, unter {critical} K',
    remedy: 'bei und über der kritischen Temperatur gibt es ein Fluid und keine Grenze zwischen Flüssigkeit und Dampf',
  },
  'model without saturation': {
    wanted: 'ein Modell, das Flüssigkeit und Dampf kennt',
    remedy: 'nitrogen verwenden, die Referenzgleichung',
  },
  'not a pair of properties': {
    wanted: '{pairs}',
    remedy: 'einen Zustand durch genau zwei seiner Größen benennen, in einem dieser Paare',
  },
  'empty space': {
    wanted: 'mehr als null, ab {least}',
    remedy: 'ein leerer Raum hat keinen Zustand des Gases; eine Massendichte wird erst durch die molare Masse geteilt',
  },
  'not a reference state': {
    wanted: 'ein Druck über Vakuum und eine Temperatur über dem absoluten Nullpunkt',
    remedy: 'anderswo hat ein Volumen keine Größe; normalConditions ist ein Bezugszustand',
  },
  'not minutes at rest': {
    wanted: "Minuten, null oder mehr, oder 'not known'",
    remedy: 'zählen, seit Öl oder Gas zuletzt bewegt wurden',
  },
  'not an ambient pressure': {
    wanted: '{least} hPa bis {most} hPa absolut',
    remedy:
      'die Ablesung des Barometers in dessen Einheit angeben (hPa und mbar sind dasselbe): auf Meereshöhe etwa 1013 hPa',
  },
  'outside the table': {
    wanted: '{first} bis {last}, die Zeilen der Tabelle',
    remedy:
      'bei einer Temperatur ablesen, die die Tabelle enthält, oder die Vorgabe sagen lassen, was jenseits davon gilt',
  },
  'reference outside the table': {
    wanted: '{first} bis {last}, die Zeilen der Tabelle',
    remedy: 'die Bezugstemperatur ist eine, bei der die Tabelle einen Druck nennt',
  },
  'rows out of order': {
    wanted: 'Temperaturen und Drücke, die beide von Zeile zu Zeile steigen',
    remedy:
      'die Zeilen ordnen, über doppelt Angegebenes entscheiden, und diese Zeile und die davor auf Druckfehler prüfen',
  },
  'too few rows': { wanted: 'zwei Zeilen oder mehr', remedy: 'eine Zeile ist ein Bezugspunkt, keine Tabelle' },
  'unknown column': {
    wanted: 'eine der Spalten {columns}, jede einmal genannt',
    remedy: 'die Spalte genau so nennen, wie die Tabelle es tut',
  },
  'cells left out': {
    wanted: '{count}, eine für jede {other}',
    remedy: 'die Tabelle auf eine ausgelassene oder doppelt gelesene Zelle prüfen',
  },
  'limits crossed': {
    wanted: 'Grenzen, die den Sollwert einschließen',
    remedy: 'prüfen, was Minimum und was Maximum ist, ihre Einheiten, und die Tabellen gegen die Anleitung',
  },
  'band reaches zero': {
    wanted: 'eine untere Grenze über null Überdruck',
    remedy: 'Temperatur und Toleranz und ihre Einheiten prüfen: ein leerer Speicher darf nie als gefüllt gelten',
  },
  'not a percentage': {
    wanted: 'ein Prozentsatz über 0 und unter 100',
    remedy: 'den Prozentsatz selbst angeben: 2 für ± 2 %',
  },
  'band without width': {
    wanted: 'eine Toleranz von mehr als null nach mindestens einer Seite',
    remedy: 'die Toleranz der Anleitung angeben; ein Band ohne Breite kann kein Manometer treffen',
  },
  'not a tolerance': {
    wanted: 'plusMinus, oder below und above, oder plusMinusPercentOfGauge, oder minimum und maximum',
    remedy: 'das Band auf genau eine dieser Arten angeben',
  },
  'nominal without a table': {
    wanted: 'ein Nennpunkt nur neben einer Tabelle',
    remedy: 'eine Vorgabe ohne Tabelle nennt ihren einen Punkt als precharge',
  },
  'above allowable': {
    wanted: 'höchstens der zulässige Druck, {allowable} Überdruck',
    remedy: 'beide gegen Anleitung und Typschild prüfen; nicht füllen, bevor sie zusammenpassen',
  },
  'too many rows': {
    wanted: 'höchstens {most} Zeilen',
    remedy: 'einen größeren Schritt oder kleineren Bereich nehmen',
  },
  'range runs backwards': {
    wanted: 'mindestens {from}, wo der Bereich beginnt',
    remedy: 'den Bereich von der niedrigeren zur höheren Temperatur angeben',
  },
  'rows alike': {
    wanted: 'Zeilen, die sich geschrieben unterscheiden',
    remedy: 'die Temperaturen feiner schreiben, oder von Zeile zu Zeile einen größeren Schritt nehmen',
  },
  missing: { wanted: '{wanted}', remedy: 'angeben; nichts wird an seiner Stelle angenommen' },
  'basis missing': {
    wanted: '{words}',
    remedy: 'die Bezugsbasis angeben, die Messgerät oder Anleitung nennt; sie wird nie angenommen',
  },
  'wrong basis': {
    wanted: '{words}',
    remedy:
      'hier gilt nur diese Bezugsbasis: eine Ablesung ist Überdruck, ein Umgebungsdruck absolut, eine Toleranz eine Differenz',
  },
  'unknown field': {
    wanted: 'hier kein Feld dieses Namens',
    remedy: 'Schreibweise und Stelle prüfen; über ein unverstandenes Feld wird nicht hinweggelesen',
  },
  'forbidden key': {
    wanted: 'nirgends ein Feld dieses Namens',
    remedy: 'prüfen, was es schrieb: dieser Name bedeutet für JavaScript etwas anderes',
  },
  'unknown version': { wanted: '{words}', remedy: 'diese Version liest die Bibliothek' },
  'not an object': { wanted: 'ein Objekt', remedy: SEE_README },
  'not a list': { wanted: 'eine Liste', remedy: SEE_README },
  'not a text': {
    wanted: 'ein Text',
    remedy: 'in Anführungszeichen schreiben, ohne ein halbes Ersatzzeichenpaar',
  },
  'not a time': {
    wanted: 'Datum und Uhrzeit mit Sekunden und Abstand, etwa 2026-03-14T09:40:00+02:00 (RFC 3339)',
    remedy: 'in dieser Form schreiben; ohne Abstand von UTC ist eine Uhrzeit auf einem Schiff nicht bekannt',
  },
  'not a date': { wanted: 'ein Datum, etwa 2026-03-14 (RFC 3339)', remedy: 'in dieser Form schreiben' },
  'too short': {
    wanted: 'mindestens {least} {what}',
    remedy: 'angeben, was gemeint ist, oder das Feld weglassen, wo das erlaubt ist',
  },
  'too long': { wanted: 'höchstens {most} {what}', remedy: 'kürzen oder teilen' },
  'wrong shape': { wanted: '{wanted}', remedy: SEE_README },
  'stated nowhere': {
    wanted: '{field} der Ablesung',
    remedy: 'für die Ablesung angeben, oder einmal für die Gruppe',
  },
  'neither point nor table': {
    wanted: 'pressure mit temperature, oder table mit column',
    remedy: 'einen Punkt angeben, oder eine Spalte einer der Tabellen dieses Dokuments nennen',
  },
  'duplicate name': {
    wanted: 'ein Name, den daneben nichts anderes trägt ({what})',
    remedy:
      'jedes unterscheidbar benennen; zwei gleichen Namens sind nicht zu unterscheiden, und keines wird beurteilt',
  },
  'duplicate key': {
    wanted: 'jeder Schlüssel einmal in einem Objekt',
    remedy: 'den gemeinten behalten; was beide enthält, wird nicht beurteilt',
  },
  'unknown specification': {
    wanted: 'der Name einer der Vorgaben dieses Dokuments',
    remedy: 'die Schreibweise prüfen, oder die Vorgabe hinzufügen',
  },
  'unknown table': {
    wanted: 'der Name einer der Tabellen dieses Dokuments',
    remedy: 'die Schreibweise prüfen, oder die Tabelle hinzufügen',
  },
  'unknown instrument': {
    wanted: 'der Name eines der Messgeräte dieses Dokuments',
    remedy: 'die Schreibweise prüfen, oder das Messgerät hinzufügen',
  },
  'instrument of another kind': {
    wanted: 'der Name eines Messgeräts dieser Art: {kind}',
    remedy: 'das Messgerät nennen, das diesen Wert zeigte',
  },
  'mixed units': {
    wanted: '{first}, die Einheit der ersten Zeile',
    remedy: 'die Tabelle in der einen Einheit schreiben, in der sie gedruckt ist',
  },
  'other ambient': {
    wanted: '{ambient} hPa absolut, der Umgebungsdruck der Vorgabe',
    remedy: 'eine Tabelle und die Vorgabe, die sie verwendet, meinen denselben Umgebungsdruck',
  },
  'order of readings': {
    wanted: "'as found' zuerst und nur dort, 'as left' zuletzt und nur dort",
    remedy:
      'die Ablesungen in die Reihenfolge bringen, in der sie genommen wurden; ein zweiter Besuch ist ein anderes Dokument',
  },
  'times run backwards': {
    wanted: 'nicht früher als die Ablesung davor, {before}',
    remedy: 'die Ablesungen in ihre Reihenfolge bringen, und die Abstände von UTC prüfen',
  },
  'days run backwards': {
    wanted: 'ein Tag nicht vor {from}',
    remedy: 'zuerst den ersten Tag angeben, dann den letzten',
  },
  'rest contradicts readings': {
    wanted: 'höchstens {most} min, nach den Zeiten des Entleerens und der Ablesungen und der Arbeit dazwischen',
    remedy: 'die Zeiten prüfen, und wann Öl oder Gas zuletzt bewegt wurden',
  },
  'inherited by all objects': {
    wanted: 'nichts unter diesem Namen auf Object.prototype',
    remedy: 'suchen, was es dort hinstellt, und das beheben',
  },
  'not JSON': {
    wanted: 'JSON-Daten, wie JSON.parse sie gibt: endliche Zahlen, wohlgeformte Texte, true, false, null',
    remedy: 'reine Daten geben: anderes könnte ein Bericht nicht tragen, und niemand könnte es nochmals beurteilen',
  },
  'not a JSON text': {
    wanted: 'ein JSON-Text (RFC 8259)',
    remedy: 'den Text berichtigen, oder was ihn schrieb; schon gelesene Daten gehen an reportRound',
  },
  'too deep': {
    wanted: 'höchstens {most} Ebenen',
    remedy: 'prüfen, was es schrieb, und auf Daten, die sich selbst enthalten',
  },
  'too large': {
    wanted: 'höchstens {most} {what} in einem Dokument',
    remedy: 'das Dokument teilen; was darüber hinausgeht, wurde nicht gelesen',
  },
  'more problems': {
    wanted: 'höchstens {most} zum Auflisten',
    remedy: 'die zuerst aufgeführten beheben; die übrigen werden dann aufgeführt',
  },
  'not a report': { wanted: 'ein Bericht als JSON-Daten', remedy: 'geben, was JSON.parse daraus macht' },
  'words not sound': {
    wanted: '{wanted}',
    remedy:
      'Wörter unter den Codes der Bibliothek geben, mit keinen anderen Namen in Klammern als ihre eigenen Wörter haben',
  },
  'not one of several': {
    wanted: 'genau eines von {words}',
    remedy: 'auf eine dieser Arten angeben; zwei müssten übereinstimmen, und keine sagt nichts',
  },
  'not an accuracy class': {
    wanted: 'eine der Genauigkeitsklassen {classes} der EN 837-1',
    remedy:
      'die Klasse vom Zifferblatt ablesen; eine Genauigkeit, die keine davon ist, wird als Fehlergrenze angegeben',
  },
  'corrected twice': {
    wanted: 'die Berichtigung eines Manometers einmal',
    remedy:
      'den Druck angeben, wie das Manometer ihn zeigte, und correctionIncluded weglassen: sein Kalibrierschein berichtigt ihn',
  },
  'outside bounds': {
    wanted: '{bounds}',
    remedy: 'Wert, Vorzeichen und Einheit dort prüfen, wo abgelesen wurde',
  },
  'not a count': {
    wanted: 'eine ganze Zahl von {least} bis {most}',
    remedy: 'eine ganze Zahl angeben; es wird gezählt, nicht gemessen',
  },
  'too few rows to audit': {
    wanted: 'zwei Zeilen oder mehr; drei, um eine falsche Zelle zu vermuten, sechs, um sie zu nennen',
    remedy: 'eine Zeile passt zu jedem Gas: mehr Zeilen der Tabelle geben',
  },
  'not each once': {
    wanted: 'jedes davon einmal: {words}',
    remedy: 'alle in die gemeinte Reihenfolge bringen, und keine anderen',
  },
  'stop not beyond': {
    wanted: 'ein Druck {side} dem davor, {before} Überdruck',
    remedy: 'nachgefülltes Gas erhöht den Druck, abgelassenes senkt ihn: prüfen, was gemeint ist',
  },
  'leaves the model': {
    wanted: 'durchweg Gas, innerhalb des Modells {model}',
    remedy:
      'Drücke, Temperaturen und Volumen prüfen, oder eine kleinere Änderung nehmen; dort endet das Modell: {reason}',
  },
  'too few readings': {
    wanted: '{least} Ablesungen oder mehr',
    remedy: 'nochmals ablesen, wenn sich der Druck um mehr als den Schritt des Manometers geändert hat',
  },
  'minutes out of order': {
    wanted: 'mehr als {before} min, die Zeit der Ablesung davor, um eine Millionstel Minute oder mehr',
    remedy: 'die Ablesungen in ihre Reihenfolge bringen, jede zu einer eigenen Zeit',
  },
  'not the hottest': {
    wanted: 'mindestens {from}, bei der das Gas schon bekannt ist',
    remedy:
      'die höchste Temperatur angeben, die das Gas im Betrieb oder aufgelegt erreichen kann; sie liegt nie unter einer, die es hatte',
  },
  'pressures crossed': {
    wanted: 'weniger als {high} absolut, bis wohin gefüllt wird',
    remedy: 'gefüllt wird auf den höheren Druck, abgelassen auf den niedrigeren',
  },
  'more than there is': {
    wanted: 'weniger als {contents}, alles Gas, das es gibt',
    remedy: 'Menge, Volumen und Zeit und ihre Einheiten prüfen; kein Behälter verliert mehr, als er enthält',
  },
  'step not signed': {
    wanted: 'wer es wann tat, oder wer es wann und warum ausließ',
    remedy: 'den Schritt tun und unterschreiben; was ausgelassen wird, wird angegeben und bleibt in der Aufzeichnung',
  },
  'protection left out': {
    wanted: 'was Menschen stattdessen schützte, neben wer den Schritt wann und warum ausließ',
    remedy:
      'den Schritt tun; er schützt Menschen. Geht es nicht, anhalten und den Verantwortlichen entscheiden lassen, was ihn ersetzt',
  },
  'signed out of order': {
    wanted: 'nicht früher als {before}, als der Schritt davor unterschrieben wurde',
    remedy:
      'die Zeiten und ihre Abstände von UTC prüfen; die Schritte stehen in der Reihenfolge, in der sie Menschen schützen',
  },
} satisfies Readonly<Record<string, ProblemText>>;
