// German: the cautions.
import type { EveryWord } from './language.js';

export const GERMAN_CAUTIONS: EveryWord['cautions'] = {
  'reading above the allowable pressure':
    'Das Manometer der Gasseite zeigt mehr als den zulässigen Druck des Speichers. Vor jeder anderen Arbeit nach dem ' +
    'Verfahren des Herstellers sichern; nicht erwärmen.',
  'target above the allowable pressure':
    'Bei dieser Temperatur liegt schon der Sollwert über dem zulässigen Druck. Nicht füllen. Den Speicher abkühlen lassen ' +
    'und die Vorgabe prüfen.',
  'stop pressure above the allowable pressure':
    'Füllen auf den Sollwert mit seinem Zuschlag würde den zulässigen Druck überschreiten. Kein Abschaltdruck wird genannt.',
  'nitrogen only':
    'Nur mit Stickstoff füllen, niemals mit Sauerstoff oder Luft: mit Öl können sie explodieren. Etikett und Anschluss der ' +
    'Flasche prüfen.',
  'stored pressure':
    'Ein Speicher ist ein Druckbehälter und bleibt geladen, wenn die Anlage abgestellt ist. Niemals ein Teil davon unter ' +
    'Druck lösen. Flasche, Druckminderer, Schlauch und Manometer müssen für den Druck zugelassen sein.',
  'secure and drain':
    'Vor dem Ablesen oder Füllen: Maschine abstellen und gegen Anlassen sichern, Speicher absperren, Ölseite entleeren und ' +
    'nachprüfen, dass sie drucklos ist.',
  asphyxiation:
    'Stickstoff verdrängt die Luft, ohne sich anzukündigen. Lüften, an eine sichere Stelle ablassen, und vor dem Betreten ' +
    'eines geschlossenen Raums den Sauerstoff messen.',
  'maker decides':
    'Die Anleitung des Herstellers, Klassenvorschriften, örtliche Vorschriften und die zugelassene Fachkraft entscheiden. ' +
    'Diese Zahlen helfen sachkundigen Personen und ersetzen nichts davon.',
  'empty gas side':
    'Eine leere Gasseite nicht füllen, bevor die Ursache gefunden ist: durch ein gerissenes Trennelement bläst Gas ins Öl.',
  'large loss':
    'Mehr als die Hälfte des Gases fehlt. Das ist kein langsamer Verlust: vor dem Füllen herausfinden, wohin es ging, und ' +
    'die Ablesung mit einem zweiten Manometer bestätigen.',
  'not comparable':
    'Ohne vollen Nachweis (Ölseite entleert und drucklos, Gas bekannt, in Ruhe) sagt eine Ablesung nichts über den ' +
    'Vorfülldruck. Darauf weder füllen noch ablassen.',
  'no mark to stop at':
    'Wo Füllen oder Ablassen enden soll, hat dieses Manometer keinen Teilstrich. Ein feiner geteiltes verwenden.',
  'table and nominal point disagree':
    'Die Tabelle des Herstellers und sein Nennpunkt unterscheiden sich um mehr als den gedruckten Schritt. Die Tabelle gilt ' +
    'als Sollwert; den Hersteller fragen, was gemeint ist.',
  'model uncertainty not stated':
    'Die Quelle des Gasmodells gibt für diesen Druck und diese Temperatur keine Unsicherheit der Dichte an.',
  'certificate past due':
    'Der Kalibrierschein eines Messgeräts war am Tag der Ablesung abgelaufen. Seine Berichtigung und Unsicherheit gelten ' +
    'vielleicht nicht mehr: kalibrieren lassen.',
  'reading high on the scale':
    'Die Ablesung liegt über drei Vierteln der Skale, mehr als für ein Manometer bei ruhendem Druck gedacht ist. Eines mit ' +
    'höherem Skalenendwert verwenden.',
  'common shift':
    'Mit einem Manometer gewonnene Ablesungen weichen gemeinsam ab. Eher Manometer, Einheit, Kalibrierung und Thermometer ' +
    'verdächtigen als ebenso viele Lecks: mit anderen vergleichen, bevor irgendwo Gas nachgefüllt oder abgelassen wird.',
  'slip possible':
    'In einer anderen Einheit oder mit anderem Bezug wäre die Ablesung richtig. Darauf weder nachfüllen noch ablassen: wird ' +
    'sie befolgt, wie sie ist, kann der Speicher überfüllt werden. Zahl, Einheit und Bezug an Manometer und Thermometer ' +
    'nochmals ablesen.',
  'bottle above its rating':
    'Auf 15 °C bezogen liegt der Druck einer Flasche über dem, wofür sie zugelassen ist. Nicht verwenden und nicht bewegen, ' +
    'Abstand halten, von Wärme fernhalten und den Lieferanten rufen.',
  'bottle of another gas':
    'Das Etikett einer Flasche nennt ein anderes Gas als das Füllgas. Nicht anschließen; beiseitestellen. Die Farbe einer ' +
    'Flasche beweist nicht, was darin ist.',
  'above the rating of kit or regulator':
    'Eine Flasche oder ein gewünschter Druck liegt über dem, was Füllvorrichtung oder Druckminderer aushalten dürfen. Nicht ' +
    'anschließen; Füllvorrichtung und Druckminderer verwenden, die dafür zugelassen sind.',
  'booster needed':
    'Ein gewünschter Druck liegt über jeder Flasche: Gas strömt nicht bergauf. Nötig ist ein Verdichter, nach eigener ' +
    'Anleitung betrieben, oder eine Flasche mit höherem Druck.',
  'settled pressures':
    'Der Plan rechnet jeden Behälter bei seiner eigenen gleichbleibenden Temperatur: seine Drücke sind die nach dem ' +
    'Ausgleich. Während Gas strömt, ist der Speicher wärmer und die Flasche kälter, und Manometer zeigen anderes.',
  'stop may settle high':
    'Wenn das Gas seine Wärme vor dem Abschalten abgibt oder aufnimmt, kommt es über dem Band zur Ruhe. Warten, nochmals ' +
    'ablesen und ablassen.',
  'stop may settle low':
    'Wenn das Gas die Verdichtungswärme bis zum Abschalten behält, kommt es unter dem Band zur Ruhe. Warten, nochmals ' +
    'ablesen und nachfüllen.',
  'computed stop':
    'Dieser Abschaltdruck geht über den Zuschlag der Vorgabe hinaus, auf die Angabe hin, dass ein berechneter zulässig ist. ' +
    'Mit der Anleitung des Herstellers vergleichen und den zulässigen Druck niemals überschreiten.',
  'hot gas above the allowable pressure':
    'Bei der höchsten angegebenen Temperatur läge schon das Gas allein über dem zulässigen Druck des Speichers. So nicht ' +
    'lassen: den Hersteller nach einem niedrigeren Vorfülldruck fragen, oder kühl halten.',
  'oxygen below the limit':
    'Nach dieser Freisetzung fällt der Sauerstoff unter die angegebene Grenze. Niemand bleibt im Raum und niemand betritt ' +
    'ihn, auch nicht um zu helfen, ohne Atemschutzgerät und jemanden draußen.',
  'measure oxygen':
    'Ein berechneter Sauerstoffanteil gibt niemals einen Raum frei. Lüften und den Sauerstoff in mehreren Höhen messen, ' +
    'bevor und solange jemand darin ist, nach den Regeln für geschlossene Räume. Kaltes Gas liegt unten.',
  'stored energy':
    'All diese Energie wird auf einmal frei, wenn der Behälter birst. Aus der Zahl folgt kein sicherer Abstand: über ' +
    'Abstände und Schutzwände entscheiden Vorschriften und zugelassene Personen.',
  'rating too low':
    'Ein Teil ist für weniger als den Druck zugelassen, den es sehen kann. Nicht anschließen; die Flasche nicht öffnen.',
  'gas not known':
    'Ein Gas, von dem nicht bekannt ist, dass es Stickstoff ist, kann Luft oder Sauerstoff sein, die mit Öl explodieren ' +
    'können. Nichts nachfüllen. Nach dem Verfahren des Herstellers drucklos machen, spülen, neu füllen.',
  'purged by calculation':
    'Der verbleibende Anteil ist für Gas berechnet, das sich bei jeder Füllung ganz vermischt. In einer engen Gasseite kann ' +
    'das ausbleiben: zwischen Füllen und Ablassen warten, und wo es darauf ankommt, den Rest analysieren lassen.',
  'leak may not show':
    'Eine Prüfung, die kein Leck zeigt, hat nur gezeigt, dass es kleiner ist als das kleinste, das sie zeigen kann.',
  'work without evidence':
    'Dieser Auftrag wurde vor einer Ablesung gemacht: er sagt, was gewünscht ist, und die Ablesung entscheidet, was getan ' +
    'wird.',
  'protection replaced':
    'Ein Schritt, der Menschen schützt, wurde ausgelassen und durch etwas anderes ersetzt. Wer über diese Arbeit ' +
    'entscheidet, muss es wissen und zustimmen.',
  'done although withheld':
    'Gas wurde nachgefüllt oder abgelassen, obwohl der Auftrag es zurückhielt. Über diesen Speicher ist nichts bekannt: ' +
    'sichern und von Anfang an neu prüfen.',
};
