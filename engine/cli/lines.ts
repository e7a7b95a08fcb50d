import { type LineRead, longestLineMegabytes } from './io.ts';

/**
 * Splits a stream of UTF-8 bytes into lines (LF or CRLF). A line beyond the limit is skipped to its end and told as too long, so
 * that endless input cannot fill the memory. A byte-order mark at the start is left out.
 */
export async function* splitLines(
  chunks: AsyncIterable<Uint8Array>,
  limitBytes = longestLineMegabytes * 1024 * 1024,
): AsyncGenerator<LineRead, void, void> {
  const newline = 10;
  let line = 1;
  let parts: Uint8Array[] = [];
  let length = 0;
  const take = (): LineRead => {
    const read: LineRead = length > limitBytes ? { line, tooLong: true } : { line, text: decode(parts, length) };
    parts = [];
    length = 0;
    line += 1;
    return read;
  };
  for await (const chunk of chunks) {
    let start = 0;
    for (let end = chunk.indexOf(newline); end >= 0; end = chunk.indexOf(newline, start)) {
      add(chunk.subarray(start, end));
      start = end + 1;
      yield take();
    }
    add(chunk.subarray(start));
  }
  if (length > 0) yield take();

  function add(part: Uint8Array) {
    length += part.length;
    if (length > limitBytes) parts = [];
    else if (part.length > 0) parts.push(part);
  }
}

function decode(parts: readonly Uint8Array[], length: number): string {
  const only = parts.length === 1 ? parts[0] : undefined;
  const text = new TextDecoder('utf-8').decode(only ?? Buffer.concat(parts, length));
  return text.endsWith('\r') ? text.slice(0, -1) : text;
}
