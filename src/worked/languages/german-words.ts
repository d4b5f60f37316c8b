// German, in the words of the trade: reasons, causes, uncertainty, what settles a reading, slips.
import type { EveryWord } from './language.js';

export const GERMAN_REASONS: EveryWord['reasons'] = {
  'gas not known to be nitrogen':
    'vom Gas im Speicher ist nicht bekannt, dass es Stickstoff ist: nichts lässt sich vergleichen, und nichts darf ' +
    'nachgefüllt werden, bevor es bekannt oder nach dem Verfahren des Herstellers ersetzt ist',
  'oil side not drained':
    'die Ölseite ist nicht entleert: das Manometer zeigt den Druck des Öls hinter dem Trennelement, nicht den Vorfülldruck',
  'oil side not known':
    'es ist nicht bekannt, dass die Ölseite entleert und drucklos ist: das Manometer zeigt vielleicht den Druck des Öls',
  'reads like system pressure': 'die Ablesung {reading} stimmt mit dem Systemdruck {system} überein: das ist das Öl',
  'beyond the scale':
    'die Ablesung {reading} liegt jenseits des Skalenendes {fullScale} ihres Manometers: dort kann der Zeiger nicht ' +
    'gestanden haben; Einheit, Manometer und Niederschrift prüfen',
  'time at rest not known':
    'es ist nicht bekannt, wie lange Öl und Gas geruht haben; nötig sind {minutesNeeded} min, denn nach dem Entleeren ist ' +
    'das Gas kalt und nach dem Füllen warm',
  'not at rest long enough':
    'vor {rested} min wurden Öl oder Gas noch bewegt, nötig sind {minutesNeeded} min Ruhe: nach dem Entleeren ist das Gas ' +
    'kalt und zeigt zu wenig, nach dem Füllen warm und zeigt zu viel',
  'reads zero':
    'die Gasseite zeigt {reading}, was ein solches Manometer von null nicht unterscheiden kann (Sollwert {target}): erst ' +
    'die Ursache finden, dann Gas nachfüllen, und mit einem zweiten Manometer bestätigen; durch ein gerissenes ' +
    'Trennelement bläst Gas ins Öl',
  'empty, cause cleared':
    'die Gasseite zeigt {reading}, Sollwert {target} bei {temperature}; die Ursache ist nach Angabe untersucht und behoben',
  'no mark of the gauge in the band':
    'zwischen {lower} und {upper} liegt kein Teilstrich eines auf {step} abgelesenen Manometers, und die Ablesung ' +
    '{reading} liegt daneben: ein auf {stepNeeded} oder feiner abgelesenes Manometer entscheidet es',
  'below the lower limit':
    'um {off} zu wenig: {reading} abgelesen, Sollwert {target} bei {temperature}, untere Grenze {lower}',
  'above the upper limit':
    'um {off} zu viel: {reading} abgelesen, Sollwert {target} bei {temperature}, obere Grenze {upper}',
  'inside the limits': '{reading} abgelesen, Sollwert {target} bei {temperature}, Grenzen {lower} und {upper}',
  'not investigated': 'dass die Ursache der leeren Gasseite untersucht und behoben ist, wurde nicht angegeben',
  'target above the allowable pressure':
    'bei {temperature} liegt der Sollwert {target} über dem zulässigen Druck {allowable}: keine Menge wird genannt; ' +
    'abkühlen lassen, Vorgabe prüfen',
  'reading above the allowable pressure':
    'die Ablesung {reading} liegt über dem zulässigen Druck {allowable}: keine Menge wird genannt; nach dem Verfahren des ' +
    'Herstellers sichern',
  'stop pressure above the allowable pressure':
    'Sollwert und Zuschlag für das Abkühlen liegen mit zusammen {stop} über dem zulässigen Druck {allowable}: in Stufen ' +
    'darunter füllen und jede ausgleichen lassen',
  'not conclusive':
    'die Messgeräte lassen offen, ob {reading} zu viel ist, bei einem Sollwert {target} bei {temperature} und einer oberen ' +
    'Grenze {upper}: darauf wird kein Gas abgelassen; mit besserem Manometer oder Thermometer nochmals ablesen',
  'slip possible':
    'in einer anderen Einheit oder mit anderem Bezug wäre die Ablesung {reading} bei {temperature} richtig: Zahl, Einheit und ' +
    'Bezug an den Messgeräten nochmals ablesen, bevor Gas nachgefüllt oder abgelassen wird',
};

export const GERMAN_CAUSES: EveryWord['causes'] = {
  'valve not open': 'das Gasventil oder das Ventil der Füllvorrichtung ist nicht geöffnet',
  'gauge dead or blocked': 'das Manometer ist defekt oder seine Leitung verstopft: mit einem zweiten Manometer ablesen',
  'gas valve leaks': 'das Gasventil, sein Einsatz oder eine Dichtung ist undicht: mit Lecksuchflüssigkeit prüfen',
  'separator torn': 'das Trennelement (Membran, Blase oder Kolbendichtung) ist gerissen: Gas im Öl, Öl am Gasventil',
};

export const GERMAN_UNCERTAINTY: EveryWord['uncertainty'] = {
  gauge: 'die Genauigkeit des Manometers',
  'gauge temperature': 'die Temperatur des Manometers',
  'gauge step': 'der Schritt, auf den das Manometer abgelesen wird',
  thermometer: 'die Genauigkeit des Thermometers',
  'thermometer step': 'der Schritt, auf den das Thermometer abgelesen wird',
  emissivity: 'der Emissionsgrad der Behälterwand',
  'shell to gas': 'der Unterschied der Temperaturen von Behälterwand und Gas',
  barometer: 'der Umgebungsdruck',
  'printed pressure': 'der Schritt, auf den die Anleitung ihre Drücke angibt',
  'printed temperature': 'der Schritt, auf den die Anleitung ihre Temperaturen angibt',
  'printed ambient': 'der Umgebungsdruck, den die Anleitung meint',
  'equation of state': 'die Unsicherheit der Zustandsgleichung',
  vessel: 'die Wärmeausdehnung des Behälters',
  'temperature of the gauge':
    'die Temperatur des Manometers ist nicht bekannt: ihr Einfluss (0,04 % der Messspanne je Kelvin ab 20 °C) ist nicht ' +
    'gezählt',
  'uncertainty of the gas model': 'die Quelle des Gasmodells gibt dort keine Unsicherheit an: es ist keine gezählt',
  'drift since calibration': 'wie weit sich das Messgerät seit seinem Kalibrierschein verändert hat, ist nicht gezählt',
  'reading below zero': 'das Manometer zeigt weniger als die Null seiner Skale, wo seine Genauigkeit nicht gilt',
  'reading above full scale': 'die Ablesung liegt jenseits des Skalenendes, wo der Zeiger nicht gestanden haben kann',
  'reading in the first tenth of a scale with stop pin':
    'das Manometer hat einen Anschlagstift und steht im ersten Zehntel seiner Skale, wo seine Genauigkeitsklasse nicht gilt',
  'no evidence': 'die Ablesung ist kein Beleg für den Vorfülldruck: siehe ihr Urteil',
  'gauge not named': 'es ist nicht gesagt, mit welchem Manometer der Druck abgelesen wurde',
  'gauge not characterised': 'Skale und Genauigkeit des Manometers sind nicht angegeben',
  'gauge temperature not stated':
    'die Temperatur des Manometers ist nicht angegeben, auch nicht, dass sie nicht bekannt ist',
  'thermometer not named': 'es ist nicht gesagt, mit welchem Thermometer die Temperatur abgelesen wurde',
  'thermometer not characterised': 'die Genauigkeit des Thermometers ist nicht angegeben',
  'limit of the ambient not stated': 'es ist nicht angegeben, um wie viel der Umgebungsdruck falsch sein kann',
  'printed steps not stated': 'die Vorgabe nennt nicht die Schritte, auf die die Anleitung ihre Werte angibt',
  'vessel not stated': 'die Vorgabe nennt nicht die Wärmeausdehnung des Behälters',
  'model error correlation not stated':
    'die Runde sagt nicht, wie die Fehler der Zustandsgleichung bei zwei Temperaturen zusammenhängen',
  'number of readings not stated': 'es ist nicht angegeben, aus wie vielen Ablesungen die Ablesung der Mittelwert ist',
};

export const GERMAN_SETTLED: EveryWord['settled'] = {
  'better gauge': 'ein Manometer mit einer Fehlergrenze von {limit} oder weniger',
  'finer class': 'ein Manometer der Genauigkeitsklasse {class} oder feiner, mit gleicher Skale',
  'better thermometer': 'ein Thermometer mit einer Fehlergrenze von {limit} oder weniger',
  'more settling': 'Behälterwand und Gas bis auf {limit} gleich warm: mehr Zeit, Schatten, kein Luftzug',
  repeats: 'der Mittelwert aus {readings} Ablesungen, jede neu, mit angeklopftem Manometer und abgehobenem Thermometer',
  'nothing alone': 'keine einzelne Änderung: bessere Messgeräte zusammen, oder den Speicher auf den Sollwert bringen',
};

export const GERMAN_SLIPS: EveryWord['slips'] = {
  'unit of pressure': 'die Zahl {number} wurde in {stated} angegeben; das Manometer zeigt vielleicht {readAs}',
  'absolute stated as gauge':
    'die Zahl {number} {unit} wurde als Überdruck angegeben; das Messgerät zeigt vielleicht Absolutdruck, vom Vakuum an ' +
    'gezählt',
  'gauge stated as absolute':
    'die Zahl {number} {unit} ist vielleicht ein Überdruck, von dem der Umgebungsdruck irrtümlich abgezogen wurde',
  'unit of temperature': 'die Zahl {number} wurde in {stated} angegeben; das Thermometer zeigt vielleicht {readAs}',
};

export const GERMAN_EXPLAINED = 'die Ablesung wäre richtig bei einer Gastemperatur von {explaining}';

export const GERMAN_CORRECTED = '{corrected} (berichtigt; das Manometer zeigte {shown})';
