/** The longest form of `text`, letters taken from its middle, that fits; `…` alone if none does. */
export function shorten(text: string, fits: (candidate: string) => boolean): string {
  if (fits(text)) return text;
  const letters = Array.from(text);
  for (let kept = letters.length - 1; kept > 0; kept--) {
    const head = Math.ceil(kept / 2);
    const start = letters.slice(0, head).join('').trimEnd();
    const end = letters
      .slice(letters.length - (kept - head))
      .join('')
      .trimStart();
    const candidate = `${start}…${end}`;
    if (fits(candidate)) return candidate;
  }
  return '…';
}
