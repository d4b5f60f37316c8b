// English: filling from bottles, and the numbers about what can hurt.
import type { FillingWords, SafetyWords } from './charging-words.js';

export const ENGLISH_FILLING: FillingWords = {
  heading: 'Filling, step by step',
  columns: {
    bottle: 'bottle',
    at15C: 'gauge pressure at 15 °C',
    state: 'state',
    aboveResidual: 'above its residual pressure',
    use: 'use',
    after: 'reads after',
    because: 'why',
  },
  states: { full: 'full', 'part used': 'part used' },
  uses: { used: 'used', 'not needed': 'not needed', 'left out': 'left out' },
  nothing: 'Nothing can be filled.',
  step:
    '{bottle} on {name}: to {pressure} settled, {ended}; {moved} of nitrogen, and {vented} vented from the kit. The bottle ' +
    'then reads {after}.',
  ended: {
    'at the pressure wanted': 'the pressure wanted',
    equalised: 'equalised',
    "at the bottle's residual pressure": 'with the bottle at its residual pressure',
  },
  stop: 'Stop at {mark}, close, wait; it settles at {least} to {most}.',
  again: 'Read, and then again:',
  notInBand: 'That is not in the band.',
  noMark: 'There is no mark of this gauge to stop at.',
  bleed: '{name}, to be bled:',
  noBleeding: 'no stop can be given: gas of this pressure would condense on the way; look at the reading again.',
  checked:
    'A check itself costs gas. It took most from {name}, {gas}: before the kit was connected it held {before}, {fall} more ' +
    'than was read.',
  heldBack: '{name}, not planned: {because}.',
  undone: '{name} stays undone: {because}; {missing} missing.',
  proven: 'No plan of such steps is better: proven.',
  notProven: 'That no plan is better is not proven: {objectives}.',
  objectives: {
    'accumulators completed': 'accumulators completed',
    'full bottles opened': 'full bottles opened',
    'bottles used': 'bottles used',
    connections: 'connections',
    'useful remainder': 'useful remainder',
  },
  vented: 'Vented from the kit in all: {vented}. Pressures are those after settling, at the temperatures read.',
  orderNone: 'Bottles to order for this work: none.',
  order: 'Bottles to order: {order}; needed: {needed}, the rest is reserve.',
  fewer: 'Fewer may do.',
  noOrder: 'Bottles to order: none would do: {because}.',
};

export const ENGLISH_SAFETY: SafetyWords = {
  heading: 'Safety numbers',
  clearNothing: 'They clear nothing: the maker, local codes and licensed practice decide.',
  hot: {
    'not above the allowable pressure':
      '{specification}: gas at its upper limit comes to {pressure} when hottest, not above the allowable pressure of {allowable}.',
    'above the allowable pressure':
      '{specification}: gas at its upper limit comes to {pressure} when hottest, ABOVE the allowable pressure of {allowable}.',
  },
  energy: '{specification}: stored energy {charged} charged; as of {tnt} of TNT.',
  energyInService: '{specification}: stored energy {charged} charged, {service} in service; as of {tnt} of TNT.',
  ratings: {
    'above its rating': '{specification}: {part} above its rating: it takes {limit}, and {pressure} comes.',
    'above its rating if the pressure is not reduced':
      '{specification}: {part} above its rating if the pressure is not reduced: it takes {limit}, and {pressure} may come.',
    'above three quarters of its scale':
      '{specification}: {part} above three quarters of its scale: these are {limit}, and {pressure} comes.',
    'relief valve opens below the pressure wanted':
      '{specification}: the relief valve opens at {limit}, below the {pressure} wanted.',
    'regulator set below the pressure wanted':
      '{specification}: the regulator is set to {limit}, below the {pressure} wanted.',
  },
  parts: {
    bottle: 'bottle',
    'regulator inlet': 'inlet of the regulator',
    'regulator outlet': 'outlet of the regulator',
    hose: 'hose',
    gauge: 'gauge',
    vessel: 'vessel',
  },
  nothingFound: '{specification}: ratings of the charging line: nothing found, which is no approval.',
  leak: {
    bubbles:
      '{specification}: leak test for the loss that matters: with liquid, a bubble every {minutes} min, {against}.',
    noBubbles: '{specification}: leak test for the loss that matters: with liquid, no bubble, {against}.',
    gauge:
      '{specification}: leak test for the loss that matters: the gauge falls by {fall}, {against}; {cooling} of cooling ' +
      'does the same.',
  },
  against: { 'shows it': 'which shows it', 'does not show it': 'which does NOT show it' },
  purged:
    '{specification}: gas that is not known, let out and purged: after {fillings} fillings {percent} of it are left, for ' +
    '{gas} of nitrogen.',
  notPurged: {
    'not reached by any number of fillings':
      '{specification}: no number of fillings leaves as little of a gas that is not known as is wanted.',
    'not reached by the most that are counted':
      '{specification}: {fillings} fillings do not leave as little of a gas that is not known as is wanted.',
  },
  release: {
    accumulator:
      'The gas of one accumulator ({name}) released: {percent} oxygen ({by}, {ventilation}), {outcome}; measure before anybody enters.',
    bottle:
      'The gas of one bottle ({name}) released: {percent} oxygen ({by}, {ventilation}), {outcome}; measure before anybody enters.',
  },
  by: { displacement: 'displacement', 'well mixed': 'well mixed' },
  ventilation: { 'without ventilation': 'without ventilation', 'with ventilation': 'with ventilation' },
  outcomes: {
    'below the limit': 'BELOW the limit',
    'not below the limit by calculation': 'not below the limit by calculation',
  },
};
