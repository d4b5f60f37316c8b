// Writes each result to a file as soon as it is there: what was found stays found if the run is cut short.
import { appendFileSync } from 'node:fs';
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';

/**
 * @import { MutantResult, StrykerOptions } from '@stryker-mutator/api/core'
 * @import { MutationTestingPlanReadyEvent, Reporter } from '@stryker-mutator/api/report'
 */

/** @param {StrykerOptions} options */
function create(options) {
  const path = String(options['results']);
  /** @param {unknown} line */
  const write = (line) => appendFileSync(path, `${JSON.stringify(line)}\n`);
  /** @type {Reporter} */
  const reporter = {
    /** @param {MutationTestingPlanReadyEvent} event */
    onMutationTestingPlanReady({ mutantPlans }) {
      for (const { mutant } of mutantPlans) write({ planned: mutant.id, fileName: mutant.fileName });
    },
    /** @param {Readonly<MutantResult>} result */
    onMutantTested({ id, fileName, location, mutatorName, replacement, status }) {
      write({ id, fileName, location, mutatorName, replacement, status });
    },
  };
  return reporter;
}
create.inject = tokens(commonTokens.options);

export const strykerPlugins = [declareFactoryPlugin(PluginKind.Reporter, 'results', create)];
