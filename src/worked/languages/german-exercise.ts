import type { ExerciseWords } from './derivation-words.js';

export const GERMAN_EXERCISE: ExerciseWords = {
  heading: 'Aufgabe {number}',
  ask: {
    target: 'Was muss das Gasmanometer zeigen, damit die Vorfüllung bei dieser Gastemperatur stimmt?',
    'gas to add': 'Wie viel Stickstoff bringt den Speicher bei dieser Gastemperatur auf seinen Sollwert?',
    'gas held': 'Wie viel Stickstoff ist im Speicher, wenn die Ölseite entleert ist?',
    diagnosis: 'Die Ablesung sieht falsch aus. Was steckt am ehesten dahinter?',
  },
  facts: {
    stated: 'Die Vorfüllung ist mit {pressure} bei {temperature} angegeben.',
    tolerance: 'Die Toleranz ist plus oder minus {tolerance}.',
    ambient: 'Der Umgebungsdruck ist {ambient}, damals wie heute.',
    'gas temperature': 'Als Gastemperatur wurde {temperature} notiert.',
    'gas volume': 'Das Gasvolumen ist {volume}.',
    nitrogen: 'Das Gas ist Stickstoff.',
    'factor as stated': 'Bei der angegebenen Vorfüllung ist sein Realgasfaktor {factor}.',
    'factor at the target': 'Beim Sollwert für diese Gastemperatur ist sein Realgasfaktor {factor}.',
    'factor as read': 'Wie abgelesen ist sein Realgasfaktor {factor}.',
    reading: 'Das Gasmanometer zeigt {pressure}.',
    drained: 'Die Ölseite ist entleert, und ihr Druck war null.',
    'system pressure': 'Das Hydrauliksystem stand zuletzt bei {pressure}.',
    'nothing of the oil side': 'Im Protokoll steht nichts von der Ölseite.',
    'minutes after draining': '{minutes} min nach dem Entleeren zeigt das Gasmanometer {pressure}.',
    'at rest': 'Öl und Gas sind seit einer Stunde in Ruhe.',
    'noted temperature': 'Im Protokoll steht {temperature} für die Behälterwand.',
    'noted pressure': 'Im Protokoll steht {pressure} für das Gasmanometer, das zwei Skalen hat.',
    'others within':
      'Jeder andere Speicher der Runde, mit denselben Geräten, aber von jemand anderem abgelesen, liegt in seinem Band.',
    'one of the round': 'Speicher {name}: {pressure}.',
    'one gauge': 'Alle wurden mit einem Manometer abgelesen, und alle sind gleich.',
    'charged lately': 'Vor {days} Tagen wurde der Speicher auf seinen Sollwert gefüllt.',
    'oil at the gas valve': 'Aus dem Gasventil kommt Öl.',
    'follows the system': 'Wenn die Ölseite wieder unter Druck kommt, folgt das Gasmanometer ihr bis auf {pressure}.',
  },
  diagnoses: {
    'not drained': 'Die Ölseite ist nicht entleert: das Manometer zeigt das Öl.',
    'cold after draining': 'Das Gas ist vom Entleeren noch kalt.',
    'unit slip': 'Eine Zahl wurde in einer anderen Einheit notiert, als sie abgelesen wurde.',
    'shifted gauge': 'Das Manometer ist verstellt: es zeigt überall um dasselbe zu viel oder zu wenig.',
    'torn separator': 'Das Trennelement ist gerissen.',
  },
  reasons: {
    'not drained':
      'Das Gasmanometer stimmt mit dem Hydrauliksystem überein. Durch das Trennelement zeigt es den Druck des Öls, wie groß die Vorfüllung auch ist. Entleeren, null sehen, warten, neu ablesen.',
    'cold after draining':
      'Der Druck steigt von Ablesung zu Ablesung, ohne dass jemand Gas nachfüllt, und kommt zum Sollwert: das Gas dehnte sich aus, als das Öl ging, und wird wieder warm. Wer jetzt nachfüllt, überfüllt.',
    'unit slip':
      'In einer anderen Einheit stimmt genau diese Zahl, und alles andere stimmt, wie es ist. Das Gerät noch einmal ansehen, bevor nachgefüllt oder abgelassen wird.',
    'shifted gauge':
      'Die meisten Ablesungen der Runde liegen um dasselbe daneben. Das ist das Gerät und nicht so viele Speicher auf einmal; nur der eine weit ab von den anderen ist ein Befund für sich. Das Manometer vergleichen, bevor abgelassen wird.',
    'torn separator':
      'Vor wenigen Tagen gefüllt und jetzt leer, mit Öl, wo nur Gas sein soll, und ein Manometer, das dem Öl folgt. Das Gas ist in das Öl gegangen: das System entlüften, wie der Hersteller es sagt, und nicht füllen.',
  },
  mistakes: {
    'gauge taken for absolute': 'Überdruck für absoluten Druck genommen',
    '°C taken for K': 'Grad Celsius für Kelvin genommen',
    'ideal gas taken for real': 'Stickstoff für ein ideales Gas genommen',
    'temperature not taken into account': 'den Druck des Schildes genommen, wie er dasteht, bei jeder Temperatur',
  },
  choice: '{letter}) {answer}',
  right: 'Richtig ist {letter}: {answer}',
  wrong: '{letter}: {answer}. Der Fehler: {mistake}.',
  slip: 'Hier: {slip}.',
  check: 'Die Prüfung sagt: {why}.',
  caution:
    'Eine Übung mit einem erfundenen Speicher. Für einen wirklichen gelten das Handbuch des Herstellers und die Vorschriften des Schiffs.',
};
