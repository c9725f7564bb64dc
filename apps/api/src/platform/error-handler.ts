import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors, isResponseSerializationError } from 'fastify-type-provider-zod';
import { ProblemError, problem } from './problems.ts';

/** PostgreSQL error classes that a request can cause, whichever client reported them. */
function databaseProblem(state: string): ProblemError | null {
  if (state === '23505')
    return problem(
      'already_exists',
      'There is one with the same code or key already. Use another, or change the one there is.',
    );
  if (state.startsWith('23'))
    return problem(
      'not_consistent',
      'The values do not fit together; nothing was changed. Check the fields and send again.',
    );
  if (state.startsWith('22'))
    return problem('invalid_request', 'A value is out of range or cannot be stored. Check the fields and send again.');
  if (state === '40001' || state === '40P01')
    return problem('conflict', 'Another change was made at the same moment; nothing was changed here. Send it again.');
  if (state === '57014')
    return problem('busy', 'The answer took too long. Choose a shorter period or a narrower filter.');
  return null;
}

const prismaStates: Record<string, string> = {
  P2002: '23505',
  P2003: '23503',
  P2004: '23514',
  P2020: '22003',
  P2033: '22003',
  P2034: '40001',
  P2000: '22001',
};

function stateOf(error: unknown): string | null {
  if (typeof error !== 'object' || error === null) return null;
  const { code, meta, cause } = error as {
    code?: unknown;
    meta?: { code?: unknown; driverAdapterError?: unknown };
    cause?: unknown;
  };
  if (typeof code === 'string') {
    if (/^[0-9A-Z]{5}$/.test(code) && !code.startsWith('P20')) return code;
    if (prismaStates[code]) return prismaStates[code];
  }
  if (typeof meta?.code === 'string') return meta.code;
  const original = (cause as { originalCode?: unknown } | undefined)?.originalCode;
  if (typeof original === 'string') return original;
  return stateOf(meta?.driverAdapterError) ?? stateOf(cause);
}

function fromFastify(error: FastifyError): ProblemError | null {
  if (
    error.code === 'FST_ERR_CTP_INVALID_JSON_BODY' ||
    error.code === 'FST_ERR_CTP_EMPTY_JSON_BODY' ||
    error instanceof SyntaxError
  )
    return problem('malformed_json', 'Send a JSON body that parses, with Content-Type application/json.');
  if (error.statusCode === 413) return problem('too_large', error.message);
  if (error.statusCode === 415)
    return problem(
      'unsupported_media',
      'Send JSON with Content-Type application/json, or a file as multipart/form-data where a file is asked for.',
    );
  if (error.statusCode === 429) return problem('too_many_requests', error.message);
  if (error.statusCode === 503) return problem('busy', 'Try again in a few seconds.');
  if (error.statusCode && error.statusCode >= 400 && error.statusCode < 500)
    return problem('invalid_request', error.message);
  return null;
}

/** What the schema library says of a value that was not sent, in words for whoever sent it. */
const plainMessage = (message = 'is not valid'): string =>
  message.endsWith('received undefined') ? 'is missing' : message;

function toProblem(error: FastifyError, request: FastifyRequest): ProblemError {
  if (error instanceof ProblemError) return error;
  if (hasZodFastifySchemaValidationErrors(error)) {
    const where = error.validationContext ?? 'request';
    const errors = error.validation.map((it) => ({
      path: `${where}${it.instancePath}`,
      message: plainMessage(it.message),
    }));
    return problem(
      'invalid_request',
      `${errors
        .map((it) => `${it.path}: ${it.message}`)
        .slice(0, 5)
        .join('; ')}. Nothing was changed; mend these and send again.`,
      errors,
    );
  }
  const state = isResponseSerializationError(error) ? null : stateOf(error);
  const known = (state && databaseProblem(state)) || fromFastify(error);
  if (known) return known;
  request.log.error(error);
  return problem(
    'internal',
    `The fault is logged under ${request.id}; nothing was changed. Try again, and tell the administrator if it stays.`,
  );
}

export function sendProblem(reply: FastifyReply, { problem: document }: ProblemError): FastifyReply {
  return reply
    .code(document.status)
    .type('application/problem+json')
    .serializer(JSON.stringify)
    .send({ ...document, instance: reply.request.id });
}

/** What Fastify refuses before there is a route: an address or method it cannot read. */
export const refuseUnreadable = (_: unknown, __: unknown, reply: FastifyReply): FastifyReply =>
  sendProblem(reply, problem('invalid_request', 'The address cannot be read. Check its percent signs.'));

export function handleErrors(app: FastifyInstance): void {
  app.setErrorHandler<FastifyError>((error, request, reply) => sendProblem(reply, toProblem(error, request)));
}
