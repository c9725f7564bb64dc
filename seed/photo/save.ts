import sharp from 'sharp';
import { idMaker } from '../ids.ts';
import type { Row, Table } from '../tables/row.ts';
import type { Picture } from './choose.ts';

/** Keeps a picture as the service keeps photos. */
export type SavePhoto = (image: Buffer) => Promise<{ file: string; width: number; height: number; bytes: number }>;

/** Draws and keeps the pictures; returns their rows. */
export async function photoTable(pictures: Picture[], reports: readonly Row[], save: SavePhoto): Promise<Table> {
  const byId = new Map(reports.map((row) => [row.id, row]));
  const photoId = idMaker(0, 0);
  const rows = pictures.map(async ({ failureId, svg, caption }) => {
    const report = byId.get(failureId)!;
    const stored = await save(await sharp(Buffer.from(svg)).png().toBuffer());
    const addedAt = String(report.reported_at);
    return {
      id: photoId(`photo ${failureId}`, Date.parse(addedAt)),
      plant_id: report.plant_id!,
      failure_id: failureId,
      ...stored,
      caption,
      added_at: addedAt,
      added_by: report.reported_by!,
    };
  });
  return { name: 'photo', rows: await Promise.all(rows) };
}
