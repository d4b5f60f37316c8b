import { writeFileSync } from 'node:fs';
import { test } from 'vitest';
import { absolute, gauge, nitrogen, pressureDifference, specification, standardAtmosphere, temperature, temperatureDifference, volume } from 'isochore';
import { card, documentHtml, documentLatex, documentMarkdown, documentText, english, german } from 'isochore/worked';
test('x', () => {
  const spec = specification({
    gas: nitrogen,
    precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
    ambient: standardAtmosphere,
    tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
    separator: 'diaphragm',
    gasVolume: volume(5, 'L'),
    allowable: gauge(210, 'bar'),
    settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
  });
  for (const language of [english, german]) {
    const page = card(spec, { name: 'exhaust valve drive, cylinders 1 to 6', manual: 'instruction book, chapter 7', from: temperature(0, '°C'), to: temperature(60, '°C'), every: temperatureDifference(5, 'K'), temperatureStep: { step: 1, unit: '°C' }, ambient: standardAtmosphere, gaugeStep: { step: 0.5, unit: 'bar' }, volumeStep: { step: 0.1, unit: 'L' }, language });
    writeFileSync(`/tmp/card-${language.code}.html`, documentHtml(page));
    writeFileSync(`/tmp/card-${language.code}.md`, documentMarkdown(page));
    writeFileSync(`/tmp/card-${language.code}.tex`, documentLatex(page));
    writeFileSync(`/tmp/card-${language.code}.txt`, documentText(page, { width: 100 }));
  }
  void absolute;
});
