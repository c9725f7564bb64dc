import { uuidv7obj } from 'uuidv7';

/** Time-ordered identifier (RFC 9562 version 7), so that big tables grow at one end of their index. */
export const newId = (): string => uuidv7obj().toString();
