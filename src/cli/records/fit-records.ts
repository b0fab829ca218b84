import { fitFiles, fitJson } from '../../report/files/fit.js';
import { logLeftOut, measuredFiles, measuredJson } from '../../report/files/fit-measured.js';
import { fitTable } from '../../report/terminal/records/fit.js';
import { measuredTable } from '../../report/terminal/records/fit-measured.js';
import type { FitResults } from '../../study/fit/results.js';
import type { MeasuredResults } from '../../study/measured/results.js';
import { EXIT, type ExitCode } from '../exit-code.js';
import { outputWidth, printJson, printResults, say } from '../output.js';
import { writeReport } from '../report-folder.js';
import { fitLog } from './fit-log.js';
import type { FitRequest } from './fit-request.js';
import { fitTableOf } from './fit-table.js';

/** `fit` of a floor log, or of a table of other things than times. */
export async function fitRecords(request: FitRequest, isLog: boolean): Promise<ExitCode> {
  const { out, replace, quiet, json } = request,
    results = isLog ? await fitLog(request) : await fitTableOf(request);
  if (json) printJson(isTimes(results) ? fitJson(results) : measuredJson(results));
  else
    printResults(isTimes(results) ? fitTable(results, outputWidth()) : measuredTable(results, outputWidth()));
  if (out !== undefined) {
    const files = new Map(isTimes(results) ? await fitFiles(results, say) : measuredFiles(results));
    if (isLog) files.set('left-out.csv', logLeftOut(results));
    writeReport(out, files, replace);
    if (!quiet) say(`wrote ${out}; include fitted.yaml in the scenario to use it`);
  }
  return EXIT.done;
}

const isTimes = (results: FitResults | MeasuredResults): results is FitResults => results.of === 'times';
