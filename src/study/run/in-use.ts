/** What Windows says of a file or folder that another program holds; elsewhere each has its plain meaning. */
const HELD = new Set(['EPERM', 'EACCES', 'EBUSY']);

/** Whether an error of the system may come from another program that has a file of it open. */
export const isInUse = (error: unknown, platform: NodeJS.Platform = process.platform): boolean =>
  error instanceof Error &&
  'code' in error &&
  (platform === 'win32' ? HELD.has(String(error.code)) : error.code === 'EBUSY');
