/** Text in a drawing: broken into lines by an estimate of its width, and safe to stand in XML. */

const wide = /[MWmw@%&ÄÖÜA-Z—…]/;
const narrow = /[iljtfrI.,:;'’!|()[\] ]/;
/** Estimated width in points; the sans-serif faces used here differ by a few per cent. */
export const widthOf = (text: string, size: number): number =>
  [...text].reduce((sum, letter) => sum + (wide.test(letter) ? 0.7 : narrow.test(letter) ? 0.3 : 0.55), 0) * size;

/** Lines no wider than `width`; a word longer than a line is cut. */
export function linesOf(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    let rest = word;
    while (widthOf(rest, size) > width) {
      const fits = [...rest].findIndex((_, place) => widthOf(rest.slice(0, place + 1), size) > width);
      if (line) lines.push(line);
      lines.push(rest.slice(0, Math.max(1, fits)));
      line = '';
      rest = rest.slice(Math.max(1, fits));
    }
    if (line && widthOf(`${line} ${rest}`, size) > width) {
      lines.push(line);
      line = rest;
    } else line = line ? `${line} ${rest}` : rest;
  }
  return line ? [...lines, line] : lines;
}

export const xml = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`).replace(/\p{Cc}/gu, ' ');

export const textAt = (x: number, y: number, size: number, text: string, more = ''): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" font-family="Roboto" font-size="${size}" ${more}>${xml(text)}</text>`;

export const drawing = (width: number, height: number, parts: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height.toFixed(1)}" viewBox="0 0 ${width} ${height.toFixed(1)}">${parts.join('')}</svg>`;
