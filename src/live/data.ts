/** What the page carries in an element of its own: JSON, packed by gzip, in base 64. */
export async function unpacked(id: string): Promise<string> {
  const text = document.getElementById(id)?.textContent ?? '',
    bytes = Uint8Array.from(atob(text.trim()), (letter) => letter.charCodeAt(0)),
    stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).text();
}
