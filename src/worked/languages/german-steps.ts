// German: the sequence of a check, filling and settling, the supply of gas.
import type { EveryWord, Language } from './language.js';

export const GERMAN_STEPS: Language['steps'] = {
  secure: 'Die Maschine abstellen und gegen Anlassen sichern; Schilder anbringen, wo sie angelassen werden kann.',
  'note valves': 'Die Stellung jedes Ventils, das bewegt wird, vorher aufschreiben.',
  isolate: 'Den Speicher vom Hydrauliksystem absperren.',
  drain: 'Die Ölseite langsam in den Tank entleeren.',
  'verify zero': 'An einem Manometer der Ölseite nachprüfen, dass sie drucklos ist und bleibt.',
  fit:
    'Die Füllvorrichtung mit geschlossenem Gas- und Ablassventil anbauen. Flasche, Druckminderer, Schlauch und Manometer ' +
    'müssen für den Druck zugelassen sein; der zulässige Druck des Speichers ist {allowable}.',
  read: 'Wenn Öl und Gas {minutes} min geruht haben, Druck und Temperatur der Behälterwand ablesen, und das Barometer.',
  compare:
    'Mit dem Sollwert {target} bei {temperature} vergleichen: am Manometer von {lower} bis {upper}. Abgelesen: {reading}.',
  depressurise:
    'Vom Gas ist nicht bekannt, dass es Stickstoff ist: nichts nachfüllen. Nach dem Verfahren des Herstellers ganz an eine ' +
    'sichere Stelle ablassen.',
  purge: 'Mit Stickstoff füllen und wieder ablassen, bis vom anderen Gas so wenig übrig ist, wie verlangt wird.',
  charge: 'Langsam mit Stickstoff auf {stop} füllen, etwa {gas}; niemals über den zulässigen Druck {allowable}.',
  settle: 'Die Ventile schließen und {minutes} min warten.',
  bleed: 'Wo mehr als {upper} abgelesen wird, langsam an eine sichere Stelle ablassen, bis {bleed} und nicht weiter.',
  're-check':
    'Druck und Temperatur nochmals ablesen und mit dem Sollwert bei dieser Temperatur vergleichen, nicht bei der ersten.',
  'leak test':
    'Das Gasventil schließen, die Füllvorrichtung entlasten und das Gasventil mit Lecksuchflüssigkeit prüfen. Niemand hält ' +
    'das Gesicht darüber.',
  'close up': 'Die Füllvorrichtung abbauen, Kappe und Schutz anbringen und anziehen, wie der Hersteller es sagt.',
  'restore valves': 'Jedes Ventil in die aufgeschriebene Stellung zurückbringen und mit der Niederschrift vergleichen.',
  'try out': 'Schilder entfernen, das System anfahren und sehen, dass es läuft wie zuvor und nichts undicht ist.',
  'not needed': 'Nicht nötig: {because}.',
  withheld: 'Weder füllen noch ablassen: {because}.',
  'as the reading decides': 'Wie die Ablesung entscheidet; den Auftrag mit ihr neu machen.',
};

export const GERMAN_SETTLING: Language['settling'] = {
  'no change seen':
    'die Ablesungen unterscheiden sich um weniger als den Schritt des Manometers: eine langsamere Änderung wäre nicht zu ' +
    'sehen',
  warming: 'der Druck steigt: das Gas erwärmt sich nach seiner Entspannung; vor dem Urteil nochmals ablesen',
  'levelling out': 'die Änderung wird langsamer: das Gas nähert sich der Temperatur der Behälterwand',
  'cooling or losing gas':
    'der Druck fällt, und die Ablesungen unterscheiden Abkühlen nicht von Gasverlust: weiter ablesen, bis er zur Ruhe kommt',
  'not levelling out':
    'die Änderung wird nicht langsamer, wie sie es bei Gas täte, das zur Ruhe kommt: irgendwo strömt Gas; mit ' +
    'Lecksuchflüssigkeit nach einem Leck suchen, bevor nachgefüllt wird',
  'falls further than by cooling':
    'der Druck ist um mehr gefallen, als Abkühlen erklären kann: Gas geht verloren; mit Lecksuchflüssigkeit nach einem Leck ' +
    'suchen',
  'rises after filling':
    'der Druck steigt, obwohl nachgefülltes Gas nur abkühlen kann: ein Ventil lässt Gas durch, die Behälterwand wird ' +
    'erwärmt, oder hinter dem Trennelement kommt Öl herein',
  'falls after letting out':
    'der Druck fällt, obwohl entspanntes Gas sich nur erwärmen kann: Gas geht verloren, oder die Behälterwand kühlt ab',
  'rises and falls':
    'die Ablesungen gehen um mehr als den Schritt des Manometers in beide Richtungen: aus ihnen lässt sich nichts sagen',
  'settles before it is read': 'das Gas war vor der zweiten Ablesung zur Ruhe gekommen: früher und öfter ablesen',
  'no single time constant':
    'keine einzelne Zeitkonstante geht bis auf einen halben Schritt des Manometers durch die Ablesungen: die ersten Minuten ' +
    'weglassen, oder einen gröberen Schritt angeben',
};

export const GERMAN_SUPPLY: EveryWord['supply'] = {
  'another gas on the label': 'das Etikett der Flasche nennt ein anderes Gas: nicht anschließen',
  'purity not stated': 'eine Reinheit ist verlangt, und das Etikett der Flasche nennt keine',
  'purity too low': 'die Reinheit auf dem Etikett der Flasche ist geringer als verlangt',
  'above its rating':
    'auf 15 °C bezogen liegt der Druck der Flasche über dem, wofür sie zugelassen ist: nicht verwenden',
  'not above its residual pressure': 'der Druck der Flasche liegt nicht über ihrem Restdruck: sie zählt als leer',
  'bottle above the rating of the kit': 'die Flasche hat mehr Druck, als die Füllvorrichtung aushalten darf',
  'bottle above the rating of the regulator':
    'die Flasche hat mehr Druck, als der Eingang des Druckminderers aushalten darf',
  'nothing to add': 'der Speicher hat den gewünschten Druck oder mehr',
  'target above its allowable pressure': 'der gewünschte Druck liegt über dem zulässigen Druck des Speichers',
  'target above the rating of the kit': 'der gewünschte Druck liegt über dem, was die Füllvorrichtung aushalten darf',
  'target above the rating of the regulator':
    'der gewünschte Druck liegt über dem, was der Ausgang des Druckminderers aushalten darf',
  'target above every bottle':
    'der gewünschte Druck liegt mit dem Unterschied, den der Druckminderer braucht, über jeder Flasche: nötig ist ein ' +
    'Verdichter oder eine Flasche mit höherem Druck',
  'reading may be a slip':
    'in einer anderen Einheit oder mit anderem Bezug wäre seine Ablesung richtig: sie wird wiederholt, bevor für ihn etwas ' +
    'geplant wird',
  'no bottle to use': 'es gibt keine Flasche, die verwendet werden darf',
  'not enough gas': 'kein Plan füllt mit diesen Flaschen mehr Speicher fertig',
  'no plan found': 'kein Plan wurde gefunden, der ihn auch fertig füllt; dass es keinen gibt, ist nicht bewiesen',
};
