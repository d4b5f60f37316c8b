// German: filling from bottles, and the numbers about what can hurt.
import type { FillingWords, SafetyWords } from './charging-words.js';

export const GERMAN_FILLING: FillingWords = {
  heading: 'Füllen, Schritt für Schritt',
  columns: {
    bottle: 'Flasche',
    at15C: 'Überdruck bei 15 °C',
    state: 'Füllstand',
    aboveResidual: 'über ihrem Restdruck',
    use: 'Verwendung',
    after: 'zeigt danach',
    because: 'Grund',
  },
  states: { full: 'voll', 'part used': 'angebrochen' },
  uses: { used: 'verwendet', 'not needed': 'nicht nötig', 'left out': 'ausgelassen' },
  nothing: 'Nichts kann gefüllt werden.',
  step:
    '{bottle} an {name}: auf {pressure} nach dem Ausgleich, {ended}; {moved} Stickstoff, und {vented} aus der ' +
    'Füllvorrichtung abgelassen. Die Flasche zeigt dann {after}.',
  ended: {
    'at the pressure wanted': 'den gewünschten Druck',
    equalised: 'bis zum Druckausgleich',
    "at the bottle's residual pressure": 'mit der Flasche auf ihrem Restdruck',
  },
  stop: 'Bei {mark} aufhören, schließen, warten; es kommt bei {least} bis {most} zur Ruhe.',
  again: 'Ablesen, und dann noch einmal:',
  notInBand: 'Das liegt nicht im Band.',
  noMark: 'Dieses Manometer hat keinen Teilstrich zum Aufhören.',
  bleed: '{name}, abzulassen:',
  noBleeding: 'kein Druck zum Aufhören: Gas von diesem Druck würde dabei kondensieren; die Ablesung nochmals ansehen.',
  checked:
    'Auch eine Prüfung kostet Gas. Am meisten nahm sie {name}, {gas}: vor dem Anschließen der Füllvorrichtung waren es ' +
    '{before}, {fall} mehr als abgelesen.',
  heldBack: '{name}, nicht geplant: {because}.',
  undone: '{name} bleibt unfertig: {because}; es fehlen {missing}.',
  proven: 'Kein Plan aus solchen Schritten ist besser: bewiesen.',
  notProven: 'Dass kein Plan besser ist, ist nicht bewiesen: {objectives}.',
  objectives: {
    'accumulators completed': 'fertig gefüllte Speicher',
    'full bottles opened': 'angebrochene volle Flaschen',
    'bottles used': 'verwendete Flaschen',
    connections: 'Anschlüsse',
    'useful remainder': 'nutzbarer Rest',
  },
  vented:
    'Aus der Füllvorrichtung insgesamt abgelassen: {vented}. Drücke gelten nach dem Ausgleich, bei den abgelesenen ' +
    'Temperaturen.',
  orderNone: 'Für diese Arbeit zu bestellende Flaschen: keine.',
  order: 'Zu bestellende Flaschen: {order}; nötig: {needed}, der Rest ist Reserve.',
  fewer: 'Vielleicht genügen weniger.',
  noOrder: 'Zu bestellende Flaschen: keine würde genügen: {because}.',
};

export const GERMAN_SAFETY: SafetyWords = {
  heading: 'Zahlen zur Sicherheit',
  clearNothing: 'Sie geben nichts frei: Hersteller, örtliche Vorschriften und die zugelassene Fachkraft entscheiden.',
  hot: {
    'not above the allowable pressure':
      '{specification}: Gas an seiner oberen Grenze kommt bei der höchsten Temperatur auf {pressure}, nicht über den ' +
      'zulässigen Druck {allowable}.',
    'above the allowable pressure':
      '{specification}: Gas an seiner oberen Grenze kommt bei der höchsten Temperatur auf {pressure}, ÜBER den zulässigen ' +
      'Druck {allowable}.',
  },
  energy: '{specification}: gespeicherte Energie {charged} gefüllt; wie von {tnt} TNT.',
  energyInService: '{specification}: gespeicherte Energie {charged} gefüllt, {service} im Betrieb; wie von {tnt} TNT.',
  ratings: {
    'above its rating':
      '{specification}: {part}: mehr als zugelassen: zugelassen sind {limit}, und {pressure} kommen an.',
    'above its rating if the pressure is not reduced':
      '{specification}: {part}: mehr als zugelassen, wenn der Druck nicht gemindert wird: zugelassen sind {limit}, und ' +
      '{pressure} können ankommen.',
    'above three quarters of its scale':
      '{specification}: {part}: über drei Vierteln der Skale: diese sind {limit}, und {pressure} kommen an.',
    'relief valve opens below the pressure wanted':
      '{specification}: das Sicherheitsventil öffnet bei {limit}, unter den gewünschten {pressure}.',
    'regulator set below the pressure wanted':
      '{specification}: der Druckminderer ist auf {limit} eingestellt, unter den gewünschten {pressure}.',
  },
  parts: {
    bottle: 'Flasche',
    'regulator inlet': 'Eingang des Druckminderers',
    'regulator outlet': 'Ausgang des Druckminderers',
    hose: 'Schlauch',
    gauge: 'Manometer',
    vessel: 'Behälter',
  },
  nothingFound: '{specification}: Zulassungen der Füllleitung: nichts gefunden, was keine Freigabe ist.',
  leak: {
    bubbles:
      '{specification}: Lecksuche nach dem Verlust, auf den es ankommt: mit Flüssigkeit alle {minutes} min eine Blase, ' +
      '{against}.',
    noBubbles:
      '{specification}: Lecksuche nach dem Verlust, auf den es ankommt: mit Flüssigkeit keine Blase, {against}.',
    gauge:
      '{specification}: Lecksuche nach dem Verlust, auf den es ankommt: das Manometer fällt um {fall}, {against}; {cooling} ' +
      'Abkühlung tun dasselbe.',
  },
  against: { 'shows it': 'was ihn zeigt', 'does not show it': 'was ihn NICHT zeigt' },
  purged:
    '{specification}: Gas, das nicht bekannt ist, abgelassen und gespült: nach {fillings} Füllungen sind noch {percent} ' +
    'davon da, für {gas} Stickstoff.',
  notPurged: {
    'not reached by any number of fillings':
      '{specification}: keine Zahl von Füllungen lässt so wenig von einem Gas, das nicht bekannt ist, wie gewünscht.',
    'not reached by the most that are counted':
      '{specification}: {fillings} Füllungen lassen nicht so wenig von einem Gas, das nicht bekannt ist, wie gewünscht.',
  },
  release: {
    accumulator:
      'Das Gas eines Speichers ({name}) freigesetzt: {percent} Sauerstoff ({by}, {ventilation}), {outcome}; messen, bevor ' +
      'jemand eintritt.',
    bottle:
      'Das Gas einer Flasche ({name}) freigesetzt: {percent} Sauerstoff ({by}, {ventilation}), {outcome}; messen, bevor ' +
      'jemand eintritt.',
  },
  by: { displacement: 'Verdrängung', 'well mixed': 'voll durchmischt' },
  ventilation: { 'without ventilation': 'ohne Lüftung', 'with ventilation': 'mit Lüftung' },
  outcomes: {
    'below the limit': 'UNTER der Grenze',
    'not below the limit by calculation': 'nach Rechnung nicht unter der Grenze',
  },
};
