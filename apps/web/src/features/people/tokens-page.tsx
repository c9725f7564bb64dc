import { Badge, Button } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Token } from '#contracts/people.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { GrantsText } from './grants-text.tsx';
import classes from './people.module.css';
import { PeopleNav } from './people-nav.tsx';
import { tokensQuery } from './queries.ts';
import { RevokeButton } from './revoke-button.tsx';
import { TokenForm } from './token-form.tsx';

export const TokensPage = () => {
  const { t } = useTranslation('people');
  const [making, setMaking] = useState(false);
  const list = useInfiniteQuery(tokensQuery);
  const columns = useColumns();
  return (
    <>
      <PageHead title={t('tokens.title')}>{t('tokens.lead')}</PageHead>
      <PeopleNav />
      <div className={classes.tools}>
        <Button ml="auto" leftSection={<IconPlus size={18} aria-hidden />} onClick={() => setMaking(true)}>
          {t('tokens.make')}
        </Button>
      </div>
      <QueryBoundary
        query={list}
        height={16}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('tokens.none')}>{t('tokens.noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('tokens.title')}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={({ id }) => id}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      {making && <TokenForm onDone={() => setMaking(false)} />}
    </>
  );
};

const useColumns = (): readonly Column<Token>[] => {
  const { t } = useTranslation('people');
  const format = useFormat();
  const ended = (token: Token) =>
    token.revokedAt
      ? t('tokens.revoked')
      : token.expiresAt && new Date(token.expiresAt) <= new Date()
        ? t('tokens.expired')
        : null;
  return [
    {
      id: 'name',
      header: t('name'),
      rowHeader: true,
      phone: 'title',
      cell: (token) => (
        <>
          {token.name}{' '}
          {ended(token) && (
            <Badge variant="default" size="sm">
              {ended(token)}
            </Badge>
          )}
        </>
      ),
    },
    { id: 'roles', header: t('roles'), cell: ({ grants }) => <GrantsText grants={grants} /> },
    {
      id: 'expires',
      header: t('tokens.expires'),
      cell: ({ expiresAt }) => (expiresAt ? format.instant(expiresAt) : t('never')),
    },
    {
      id: 'used',
      header: t('tokens.lastUsed'),
      cell: ({ lastUsedAt }) => (lastUsedAt ? format.instant(lastUsedAt) : t('never')),
    },
    { id: 'by', header: t('tokens.madeBy'), cell: ({ createdBy }) => createdBy },
    {
      id: 'revoke',
      header: t('tokens.revoke'),
      headerNode: <span className="visually-hidden">{t('tokens.revoke')}</span>,
      align: 'end',
      cell: (token) => !token.revokedAt && <RevokeButton token={token} />,
    },
  ];
};
