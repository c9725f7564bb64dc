/** The fill patterns, once: as strokes on an 8 × 8 tile, drawn on a canvas and in SVG alike. */
import type { Mark, PatternName } from '#web/app/theme.ts';

export const tileSize = 8;

/** SVG path of the strokes over the plain colour; `null` for a plain fill. */
export const strokes: Readonly<Record<PatternName, string | null>> = {
  solid: null,
  diagonal: 'M-2 2 2-2M0 8 8 0M6 10 10 6',
  backDiagonal: 'M-2 6 2 10M0 0 8 8M6-2 10 2',
  dots: 'M2 2h.01M6 6h.01',
  cross: 'M0 0 8 8M0 8 8 0',
  vertical: 'M4 0V8',
  horizontal: 'M0 4H8',
  rings: 'M6.2 4A2.2 2.2 0 1 1 1.8 4 2.2 2.2 0 1 1 6.2 4',
  grid: 'M4 0V8M0 4H8',
  chevron: 'M0 6 4 2 8 6',
};

const light = (colour: string): boolean => {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return 0.299 * red + 0.587 * green + 0.114 * blue > 110;
};

/** Dark strokes on light colours, light ones on dark. */
export const strokeColour = (colour: string): string => (light(colour) ? 'rgba(0,0,0,0.55)' : 'rgba(255,255,255,0.7)');
export const strokeWidth = (pattern: PatternName): number => (pattern === 'dots' ? 2.4 : 1.2);

const made = new Map<string, CanvasPattern | string>();

/** What a canvas fills a bar of this mark with. */
export const canvasFill = ({ colour, pattern }: Mark): CanvasPattern | string => {
  const key = `${colour} ${pattern}`;
  const known = made.get(key);
  if (known) return known;
  const path = strokes[pattern];
  const fill = path === null ? colour : tile(colour, pattern, path);
  made.set(key, fill);
  return fill;
};

const tile = (colour: string, pattern: PatternName, path: string): CanvasPattern | string => {
  const scale = Math.max(1, Math.ceil(globalThis.devicePixelRatio ?? 1));
  const canvas = document.createElement('canvas');
  canvas.width = tileSize * scale;
  canvas.height = tileSize * scale;
  const pen = canvas.getContext('2d');
  if (!pen) return colour;
  pen.scale(scale, scale);
  pen.fillStyle = colour;
  pen.fillRect(0, 0, tileSize, tileSize);
  pen.strokeStyle = strokeColour(colour);
  pen.lineWidth = strokeWidth(pattern);
  pen.lineCap = 'round';
  pen.stroke(new Path2D(path));
  const fill = pen.createPattern(canvas, 'repeat');
  fill?.setTransform(new DOMMatrix().scale(1 / scale));
  return fill ?? colour;
};
