/**
 * Names that Windows keeps for devices, whatever their ending and case (Microsoft, Naming Files, Paths, and
 * Namespaces; from memory).
 */
const DEVICE = /^(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³]) *(?:\.|$)/i;
// eslint-disable-next-line no-control-regex -- controls are what is looked for
const FORBIDDEN = /[<>:"|?*\u0000-\u001f]/;
/**
 * Bytes of the last name of a path. Most systems allow 255, and a folder is filled under a longer name, with
 * a journal beside it.
 */
export const LONGEST_NAME = 200;
const LONGEST_OF_WINDOWS = 255;

/** What is wrong with a path to be written. */
export interface PathTrouble {
  readonly wanted: string;
  readonly got: string;
}

/** What would keep the system from making a file or folder of this path; undefined: nothing is seen. */
export function pathTrouble(path: string, platform: NodeJS.Platform): PathTrouble | undefined {
  const isWindows = platform === 'win32',
    names = path
      .replace(isWindows ? /^[A-Za-z]:(?=[\\/])/ : '', '')
      .split(isWindows ? /[\\/]/ : '/')
      .filter((name) => name !== ''),
    bytes = Buffer.byteLength(names.at(-1) ?? '');
  if (bytes > LONGEST_NAME)
    return { wanted: `a name of at most ${LONGEST_NAME} bytes`, got: `one of ${bytes}` };
  return isWindows ? names.map(troubleOfWindows).find((each) => each !== undefined) : undefined;
}

function troubleOfWindows(name: string): PathTrouble | undefined {
  const got = JSON.stringify(name);
  if (name === '.' || name === '..') return undefined;
  if (FORBIDDEN.test(name)) return { wanted: 'names without < > : " | ? * and controls, on Windows', got };
  if (DEVICE.test(name)) return { wanted: 'a name that Windows does not keep for a device', got };
  if (/[ .]$/.test(name)) return { wanted: 'names that end in neither a dot nor a space, on Windows', got };
  return name.length > LONGEST_OF_WINDOWS
    ? { wanted: `names of at most ${LONGEST_OF_WINDOWS} letters, on Windows`, got }
    : undefined;
}
