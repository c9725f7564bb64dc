import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let inspector: Asker;
let report: { id: string; version: number };

beforeAll(async () => {
  it = await createTestApp();
  const plant = await make.makePlant(it.db);
  inspector = await it.as('inspector', [plant.id]);
  report = (await inspector.post('/api/v1/failures', reportBody(plant.id))).body;
});
afterAll(() => it.close());

const picture = (width = 60, height = 40) =>
  sharp({ create: { width, height, channels: 3, background: { r: 200, g: 60, b: 20 } } });

function form(bytes: Buffer, { field = 'photo', name = 'p.jpg', type = 'image/jpeg', caption = '' } = {}) {
  const mark = 'mark-of-the-form';
  const part = (text: string) => Buffer.from(text);
  return {
    payload: Buffer.concat([
      part(caption && `--${mark}\r\nContent-Disposition: form-data; name="caption"\r\n\r\n${caption}\r\n`),
      part(
        `--${mark}\r\nContent-Disposition: form-data; name="${field}"; filename="${name}"\r\nContent-Type: ${type}\r\n\r\n`,
      ),
      bytes,
      part(`\r\n--${mark}--\r\n`),
    ]),
    headers: { 'content-type': `multipart/form-data; boundary=${mark}` },
  };
}
const send = (bytes: Buffer, options = {}, headers = {}, by = inspector) => {
  const { payload, headers: given } = form(bytes, options);
  return by.post(`/api/v1/failures/${report.id}/photos`, '', { payload, headers: { ...given, ...headers } });
};
const photosOf = async () => (await inspector.get(`/api/v1/failures/${report.id}`)).body.photos;

describe('a photo', () => {
  test('is turned upright, loses its metadata, and comes back in two sizes', async () => {
    const exif = {
      IFD0: { Make: 'Camera', Orientation: '6' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '38/1 43/1 0/1' },
    };
    const original = await picture(1200, 800).withExif(exif).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    expect((await sharp(original).metadata()).exif).toBeDefined();
    const { status, body } = await send(original, { caption: 'Lance bent' });
    expect([status, body]).toMatchObject([201, { width: 800, height: 1200, caption: 'Lance bent' }]);
    const { raw, headers } = await inspector.get(`/api/v1/photos/${body.id}`);
    expect(headers['content-type']).toBe('image/jpeg');
    const meta = await sharp(raw).metadata();
    expect([meta.format, meta.width, meta.height, meta.exif, meta.orientation]).toEqual([
      'jpeg',
      800,
      1200,
      undefined,
      undefined,
    ]);
    const small = await sharp((await inspector.get(`/api/v1/photos/${body.id}?size=small`)).raw).metadata();
    expect([small.width, small.height]).toEqual([320, 480]);
    expect(await photosOf()).toEqual([body]);
  });

  test('may be PNG or WebP, and the same one is stored once', async () => {
    const png = await picture().png().toBuffer();
    const webp = await picture().webp({ lossless: true }).toBuffer();
    const answers = [await send(png, { type: 'image/png' }), await send(png), await send(webp)];
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201]);
    const rows = await it.db.prisma.photo.findMany({ where: { id: { in: answers.map(({ body }) => body.id) } } });
    expect(new Set(rows.map(({ file }) => file)).size).toBe(1);
    const files = (await readdir(join(it.dataDir, 'photos'), { recursive: true })).filter((name) =>
      name.endsWith('.jpg'),
    );
    expect(files).toHaveLength(4);
  });

  test('sent twice under one key is there once', async () => {
    const before = (await photosOf()).length;
    const key = { 'idempotency-key': 'photo-key-0001' };
    const bytes = await picture(33, 44).jpeg().toBuffer();
    const answers = [await send(bytes, {}, key), await send(bytes, {}, key)];
    expect(answers[0]?.body).toEqual(answers[1]?.body);
    expect(await photosOf()).toHaveLength(before + 1);
  });

  test('can be removed; counts and audit follow', async () => {
    const [photo, ...rest] = await photosOf();
    expect((await inspector.delete(`/api/v1/photos/${photo.id}`)).status).toBe(204);
    expect(await photosOf()).toEqual(rest);
    expect((await inspector.get(`/api/v1/photos/${photo.id}`)).status).toBe(404);
    expect((await it.db.prisma.failure.findFirstOrThrow({ where: { id: report.id } })).photoCount).toBe(rest.length);
    const last = await it.db.prisma.auditEntry.findFirst({ where: { entityId: report.id }, orderBy: { id: 'desc' } });
    expect(last?.action).toBe('photo removed');
  });

  test('of a foreign plant is not found', async () => {
    const [photo] = await photosOf();
    const elsewhere = await make.makePlant(it.db);
    const stranger = await it.as('manager', [elsewhere.id]);
    const answers = [
      await stranger.get(`/api/v1/photos/${photo.id}`),
      await stranger.delete(`/api/v1/photos/${photo.id}`),
      await send(await picture().jpeg().toBuffer(), {}, {}, stranger),
    ];
    expect(answers.map(({ status }) => status)).toEqual([404, 404, 404]);
  });
});

/** A PNG of one colour and the size named, small however many pixels it claims. */
function hugePng(side: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([1, 0, 0, 0, 0], 8);
  const pixels = deflateSync(Buffer.alloc((side / 8 + 1) * side));
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', pixels),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('refused, saying what to do, and nothing kept', () => {
  test.each<[string, () => Promise<Buffer> | Buffer, number, string]>([
    ['a renamed program', () => Buffer.concat([Buffer.from('MZ'), Buffer.alloc(500, 7)]), 422, 'not a photo'],
    [
      'a drawing that could name files of the server',
      () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><image href="/etc/passwd"/></svg>'),
      422,
      'not a photo',
    ],
    ['a page', () => Buffer.from('<html></html>'), 422, 'not a photo'],
    ['an empty file', () => Buffer.alloc(0), 422, 'not a photo'],
    ['a damaged picture', async () => (await picture(600, 600).jpeg().toBuffer()).subarray(0, 900), 422, 'damaged'],
    ['only the first bytes of a picture', () => Buffer.from('\xff\xd8\xff\xe0', 'latin1'), 422, 'damaged'],
    ['a HEIC photo', () => Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'), 422, 'JPEG'],
    ['a picture of 400 million pixels', () => hugePng(20_000), 422, 'pixels'],
    ['more than 15 MB', () => Buffer.alloc(16 * 1024 * 1024, 1), 413, '15 MB'],
  ])('%s', async (_name, make, status, words) => {
    const before = await photosOf();
    const answer = await send(await make());
    expect([answer.status, answer.body.detail]).toEqual([status, expect.stringContaining(words)]);
    expect(answer.headers['content-type']).toContain('problem+json');
    expect(await photosOf()).toEqual(before);
  });

  test('another field, no file, no form', async () => {
    const bytes = await picture().jpeg().toBuffer();
    expect((await send(bytes, { field: 'picture' })).status).toBe(400);
    const url = `/api/v1/failures/${report.id}/photos`;
    const empty = '--m--\r\n';
    const noFile = await inspector.post(url, '', {
      payload: empty,
      headers: { 'content-type': 'multipart/form-data; boundary=m' },
    });
    expect(noFile.status).toBe(400);
    expect((await inspector.post(url, { photo: 'x' })).status).toBeGreaterThanOrEqual(400);
    expect((await inspector.post(url, { photo: 'x' })).status).toBeLessThan(500);
  });
});
