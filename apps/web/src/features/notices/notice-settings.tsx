import { Alert, Button, CopyButton, Group, Stack, Switch, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { useFormat } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import classes from './notices.module.css';
import { mailQuery, preferencesQuery, useSettings } from './queries.ts';

/** Whether notices are mailed, and the secret address of the own calendar. */
export const NoticeSettings = () => {
  const { t } = useTranslation('notices');
  const format = useFormat();
  const preferences = useQuery(preferencesQuery);
  const { mail, renew, close } = useSettings();
  return (
    <QueryBoundary query={preferences} height={8}>
      {({ mail: mailed, mailSetUp, feedSince }) => (
        <Stack align="flex-start">
          <Switch
            label={t('settings.mail')}
            description={t(mailSetUp ? 'settings.mailHelp' : 'settings.noMail')}
            checked={mailed}
            disabled={mail.isPending}
            onChange={(event) => mail.mutate(event.currentTarget.checked)}
          />
          {mail.isError && <ProblemNote error={mail.error} />}
          <Text size="sm" maw="62ch">
            {t('settings.feed')} {feedSince && t('settings.feedSince', { at: format.instant(feedSince) })}
          </Text>
          {renew.data && (
            <Alert variant="outline" title={t('settings.feedOnce')}>
              <output className={classes.address} aria-label={t('settings.feedAddress')}>
                {renew.data.url}
              </output>
              <CopyButton value={renew.data.url}>
                {({ copied, copy }) => (
                  <Button size="compact-sm" onClick={copy} aria-live="polite">
                    {t(copied ? 'settings.copied' : 'settings.copy')}
                  </Button>
                )}
              </CopyButton>
            </Alert>
          )}
          {renew.isError && <ProblemNote error={renew.error} />}
          <Group>
            <ConfirmButton
              question={t('settings.renewQuestion')}
              confirm={t(feedSince ? 'settings.renew' : 'settings.make')}
              pending={renew.isPending}
              onConfirm={() => renew.mutateAsync()}
            >
              {t(feedSince ? 'settings.renew' : 'settings.make')}
            </ConfirmButton>
            {feedSince && (
              <ConfirmButton
                question={t('settings.closeQuestion')}
                confirm={t('settings.close')}
                pending={close.isPending}
                error={close.error}
                onConfirm={() => close.mutateAsync()}
              >
                {t('settings.close')}
              </ConfirmButton>
            )}
          </Group>
          <MailState />
        </Stack>
      )}
    </QueryBoundary>
  );
};

/** For administrators of the group: whether mail gets out. */
const MailState = () => {
  const { t } = useTranslation('notices');
  const administers = useMay('people.write');
  const state = useQuery({ ...mailQuery, enabled: administers, retry: false }).data;
  const { retry } = useSettings();
  if (!state) return null;
  return (
    <Alert variant="outline" title={t('mail.title')}>
      <Text size="sm">
        {t(state.mailSetUp ? 'mail.setUp' : 'mail.notSetUp')}{' '}
        {t('mail.counts', { waiting: state.waiting, givenUp: state.givenUp })}
      </Text>
      {state.lastError && <Text size="sm">{t('mail.lastError', { error: state.lastError })}</Text>}
      {state.waiting + state.givenUp > 0 && (
        <Button size="compact-sm" variant="default" mt="xs" loading={retry.isPending} onClick={() => retry.mutate()}>
          {t('mail.retry')}
        </Button>
      )}
    </Alert>
  );
};
