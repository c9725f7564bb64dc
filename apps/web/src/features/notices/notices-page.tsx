import { Button, Group, SegmentedControl, Text } from '@mantine/core';
import { IconChecks } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { noticeWords } from '#contracts/notice-words.ts';
import type { Notice } from '#contracts/notices.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat, useLocale } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import classes from './notices.module.css';
import { noticesQuery, useMarkRead } from './queries.ts';
import { noticesRoute } from './routes.ts';

export const NoticesPage = () => {
  const { t } = useTranslation('notices');
  const { unread = false } = noticesRoute.useSearch();
  const navigate = useNavigate();
  const list = useInfiniteQuery(noticesQuery(unread));
  const mark = useMarkRead();
  const show = (which: string) => void navigate({ to: '/notices', search: which === 'unread' ? { unread: true } : {} });
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <Group mb="md" className="no-print">
        <SegmentedControl
          aria-label={t('which')}
          value={unread ? 'unread' : 'all'}
          onChange={show}
          data={[
            { value: 'all', label: t('all') },
            { value: 'unread', label: t('unread') },
          ]}
        />
        <Button
          ml="auto"
          variant="default"
          leftSection={<IconChecks size={18} aria-hidden />}
          loading={mark.isPending}
          onClick={() => mark.mutate('all')}
        >
          {t('markAll')}
        </Button>
      </Group>
      <QueryBoundary
        query={list}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <>
            <ul className={classes.list} aria-label={t('title')}>
              {pages
                .flatMap(({ items }) => items)
                .map((notice) => (
                  <NoticeLine key={notice.id} notice={notice} onRead={() => mark.mutate(notice.id)} />
                ))}
            </ul>
            {list.hasNextPage && (
              <Button
                mt="sm"
                variant="default"
                loading={list.isFetchingNextPage}
                onClick={() => void list.fetchNextPage()}
              >
                {t('more')}
              </Button>
            )}
          </>
        )}
      </QueryBoundary>
    </>
  );
};

const NoticeLine = ({ notice, onRead }: { notice: Notice; onRead: () => void }) => {
  const { t } = useTranslation('notices');
  const format = useFormat();
  const { title, text } = noticeWords(notice.kind, notice.facts, useLocale());
  const unread = notice.readAt === null;
  return (
    <li className={classes.notice} data-unread={unread || undefined}>
      <p>
        {unread && <span className="visually-hidden">{t('unread')}: </span>}
        <span onClickCapture={unread ? onRead : undefined}>
          <AddressLink address={notice.link}>
            <strong>{title}</strong>
          </AddressLink>
        </span>
      </p>
      <span className={classes.when}>{[notice.plantCode, format.instant(notice.at)].filter(Boolean).join(' · ')}</span>
      <Text size="sm">{text}</Text>
      {unread && (
        <Button variant="subtle" size="compact-sm" className="no-print" onClick={onRead}>
          {t('markOne')}
          <span className="visually-hidden">: {title}</span>
        </Button>
      )}
    </li>
  );
};
