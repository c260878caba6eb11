import { createHash } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import * as z from 'zod';
import { hash } from '../records/values.ts';
import type { RecordStore } from '../store/record-store.ts';
import { replyNotFound } from './reply.ts';

/** Longest photo [bytes]; a device shrinks its photos to a tenth of that. */
const PHOTO_LIMIT = 8 * 1024 * 1024;

const YEAR_s = 31_536_000;
const TYPES = ['image/jpeg', 'image/webp', 'image/png'];
const named = z.strictObject({ hash });

/** What the bytes are by their first ones, whatever the call says; null: none of the three. */
function findType(bytes: Buffer): string | null {
  const starts = (text: string, at = 0) => bytes.toString('latin1', at, at + text.length) === text;
  if (starts('\xff\xd8\xff')) return 'image/jpeg';
  if (starts('\x89PNG\r\n\x1a\n')) return 'image/png';
  return starts('RIFF') && starts('WEBP', 8) ? 'image/webp' : null;
}

/**
 * Photos, as bytes under their hash. `PUT` answers once the photo is on disk: 201 it is new, 200 it was there. What is under a hash never changes, so
 * that a browser keeps it.
 */
export async function addPhotos(app: FastifyInstance, store: RecordStore): Promise<void> {
  await app.register(async (photos) => {
    photos.removeAllContentTypeParsers();
    photos.addContentTypeParser(TYPES, { parseAs: 'buffer' }, (_request, body, done) => done(null, body));

    photos.put<{ Params: z.infer<typeof named> }>(
      '/api/photos/:hash',
      { bodyLimit: PHOTO_LIMIT, schema: { params: named, hide: true }, config: { takes: TYPES } },
      async (request, reply) => {
        const { body } = request;
        const refuse = (message: string) => reply.code(422).send({ error: 'bad-input', message });
        if (!Buffer.isBuffer(body) || body.length === 0) return refuse('the photo has no bytes');
        const found = createHash('sha256').update(body).digest('hex');
        if (found !== request.params.hash)
          return refuse(`the bytes have the SHA-256 ${found}, not the one of the address: it was changed on the way`);
        const type = findType(body);
        if (type === null) return refuse(`the bytes are no photo; expected ${TYPES.join(', ')}`);
        const { isNew } = await store.keepPhoto({ hash: found, type, bytes: body });
        return reply.code(isNew ? 201 : 200).send({ photo: found, bytes: body.length });
      },
    );

    photos.get<{ Params: z.infer<typeof named> }>(
      '/api/photos/:hash',
      { schema: { params: named, hide: true } },
      async ({ params }, reply) => {
        const photo = await store.openPhoto(params.hash);
        if (photo === null) {
          const { status, body } = replyNotFound(`there is no photo ${params.hash}`);
          return reply.code(status).send(body);
        }
        return reply
          .type(photo.type)
          .header('cache-control', `private, max-age=${YEAR_s}, immutable`)
          .send(Buffer.from(photo.bytes));
      },
    );
  });
}
