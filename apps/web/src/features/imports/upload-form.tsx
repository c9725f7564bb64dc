import { Autocomplete, Button, FileInput, Group, Progress, Radio, Stack, Text } from '@mantine/core';
import { useInfiniteQuery, useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { importKinds } from '#contracts/taxonomy.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './imports.module.css';
import { importsQuery } from './queries.ts';
import { importRoute } from './routes.ts';
import { sendFile } from './send-file.ts';

const accepted = '.csv,.txt,.tsv,.xlsx,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export const UploadForm = () => {
  const { t } = useTranslation('imports');
  const terms = useTerms();
  const format = useFormat();
  const navigate = useNavigate();
  const list = useInfiniteQuery(importsQuery);
  const [kind, setKind] = useState<string>(importKinds[0]);
  const [source, setSource] = useState('');
  const [file, setFile] = useState<File | null>(null);
  const [share, setShare] = useState(0);
  const stopper = useRef<AbortController>(null);
  const sources = new Set(
    list.data?.pages.flatMap(({ items }) => items.filter((it) => it.kind === kind).map((it) => it.source)),
  );
  const send = useMutation({
    mutationFn: (chosen: File) => {
      stopper.current = new AbortController();
      return sendFile({
        kind,
        source: source.trim(),
        file: chosen,
        key: uuidv7(),
        onShare: setShare,
        signal: stopper.current.signal,
      });
    },
    onSuccess: ({ id }) => navigate({ to: importRoute.to, params: { id } }),
    onSettled: () => setShare(0),
  });
  const stopped = send.error instanceof DOMException;

  return (
    <form
      className={classes.upload}
      onSubmit={(event) => {
        event.preventDefault();
        if (file && source.trim()) send.mutate(file);
      }}
    >
      <Stack>
        <Radio.Group label={t('kind')} value={kind} onChange={setKind}>
          <Group mt="xs">
            {importKinds.map((value) => (
              <Radio key={value} value={value} label={terms.importKind[value]} />
            ))}
          </Group>
        </Radio.Group>
        <div className={classes.fields}>
          <FileInput
            label={t('file')}
            description={t('fileHelp')}
            placeholder={t('choose')}
            accept={accepted}
            value={file}
            onChange={setFile}
            required
            clearable
            clearButtonProps={{ 'aria-label': t('clearFile') }}
          />
          <Autocomplete
            label={t('source')}
            description={t('sourceHelp')}
            data={[...sources]}
            value={source}
            onChange={setSource}
            maxLength={120}
            required
          />
        </div>
        {send.isPending && (
          <div role="status">
            <Text size="sm">{share < 1 ? t('sending', { share: format.percent(share, 0) }) : t('looking')}</Text>
            <Progress value={share * 100} aria-label={t('sendingLabel')} animated={share >= 1} />
          </div>
        )}
        {send.error && !stopped && <ProblemNote error={send.error} />}
        <Group>
          <Button type="submit" loading={send.isPending} disabled={!file || !source.trim()}>
            {t('upload')}
          </Button>
          {send.isPending && (
            <Button variant="default" onClick={() => stopper.current?.abort(new DOMException('stopped', 'AbortError'))}>
              {t('stop')}
            </Button>
          )}
        </Group>
      </Stack>
    </form>
  );
};
