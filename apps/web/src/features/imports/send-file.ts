import { type Import, uploadImport } from '#contracts/imports.ts';
import { addressOf, ProblemError, problemFrom } from '#web/ui/http.ts';

interface Options {
  kind: string;
  source: string;
  file: File;
  key: string;
  /** Told the share of the file that has been sent, 0 to 1. */
  onShare: (share: number) => void;
  signal: AbortSignal;
}

/** Uploads a file. The browser's `fetch` tells nothing about progress, so this is the one request made otherwise. */
export const sendFile = ({ kind, source, file, key, onShare, signal }: Options): Promise<Import> =>
  new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open(uploadImport.method, addressOf(uploadImport, { query: { kind, source } }));
    request.setRequestHeader('accept', 'application/json');
    request.setRequestHeader('idempotency-key', key);
    request.upload.onprogress = (event) => onShare(event.total > 0 ? event.loaded / event.total : 0);
    request.onload = () => {
      const answer = new Response(request.responseText, { status: request.status, statusText: request.statusText });
      if (request.status >= 400) problemFrom(answer).then(reject, reject);
      else answer.json().then((body) => resolve(uploadImport.response!.parse(body)), reject);
    };
    request.onerror = () =>
      reject(new ProblemError({ type: 'about:blank', title: '', status: 0, detail: '', code: 'unreachable' }));
    request.onabort = () => reject(signal.reason);
    signal.addEventListener('abort', () => request.abort(), { once: true });
    const body = new FormData();
    body.append('file', file);
    request.send(body);
  });
