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
  bleed: '{name} is to be bled.',
  condenses: '{name}: no stop to bleed to is given: gas of this pressure would condense. Look at the reading again.',
  check:
    'The check itself has taken most from {name}: it held {before} before the kit was connected, and {gas} went with the kit.',
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
  bubbles:
    '{specification}: the loss that matters is {loss} mol a year. A bubble test, {apart}, {against}; the least that it ' +
    'shows is {least} mol a year.',
  apart: 'one bubble in {minutes} min',
  noBubble: 'no bubble',
  gauge:
    '{specification}: the gauge, which that loss lowers by {fall} between the two readings, {against}; the least that it ' +
    'shows is {least} mol a year.',
  shown: { 'shows it': 'shows it', 'does not show it': 'does NOT show it' },
  purge: {
    reached:
      '{specification}: gas that is not known is let out and purged; {percent} of it is left. Fillings: {fillings}, with {gas} of nitrogen.',
    'not reached by any number of fillings':
      '{specification}: gas that is not known cannot be purged with this nitrogen: it has as much of the other gas as is wanted.',
    'not reached by the most that are counted':
      '{specification}: gas that is not known is not purged by {fillings} fillings between these pressures.',
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
