import { Anchor, Button, TextInput, Title } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Lesson } from '#contracts/lessons.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { Asked } from './asked.tsx';
import classes from './lessons.module.css';
import { askedQuery, lessonsQuery } from './queries.ts';
import { lessonsRoute } from './routes.ts';

export const LessonsPage = () => {
  const { t } = useTranslation('lessons');
  const { q } = lessonsRoute.useSearch();
  const navigate = useNavigate();
  const list = useInfiniteQuery(lessonsQuery(q));
  const search = (text: string) =>
    void navigate({ to: '/lessons', search: text.trim() ? { q: text.trim() } : {}, replace: true });
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <section aria-label={t('asked')}>
        <Title order={2}>{t('asked')}</Title>
        <p>{t('askedText')}</p>
        <QueryBoundary
          query={useQuery(askedQuery)}
          isEmpty={(items) => items.length === 0}
          empty={<EmptyNote title={t('noneAsked')}>{t('noneAskedText')}</EmptyNote>}
        >
          {(items) => items.map((it) => <Asked key={it.id} it={it} />)}
        </QueryBoundary>
      </section>
      <section aria-label={t('lessons')}>
        <Title order={2}>{t('lessons')}</Title>
        <TextInput
          className="no-print"
          label={t('search')}
          defaultValue={q ?? ''}
          onBlur={(event) => search(event.target.value)}
          onKeyDown={(event) => event.key === 'Enter' && search(event.currentTarget.value)}
          mb="md"
        />
        <QueryBoundary
          query={list}
          isEmpty={({ pages }) => pages[0]?.items.length === 0}
          empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
        >
          {({ pages }) =>
            pages.flatMap(({ items }) => items).map((lesson) => <LessonText key={lesson.id} lesson={lesson} />)
          }
        </QueryBoundary>
        {list.hasNextPage && (
          <Button variant="default" loading={list.isFetchingNextPage} onClick={() => void list.fetchNextPage()}>
            {t('more')}
          </Button>
        )}
      </section>
    </>
  );
};

const LessonText = ({ lesson }: { lesson: Lesson }) => {
  const { t } = useTranslation('lessons');
  const terms = useTerms();
  const format = useFormat();
  return (
    <article className={classes.lesson}>
      <Title order={3}>{lesson.title}</Title>
      <p className={classes.small}>
        {t('from', {
          plant: lesson.plantCode,
          cause: terms.cause[lesson.cause],
          at: format.instant(lesson.publishedAt),
        })}{' '}
        {lesson.caseId && (
          <Anchor
            inherit
            renderRoot={(props) => <Link {...props} to="/cases/$id" params={{ id: lesson.caseId ?? '' }} />}
          >
            {lesson.caseNumber}
          </Anchor>
        )}
      </p>
      <dl>
        <dt>{t('problem')}</dt>
        <dd>{lesson.problem}</dd>
        <dt>{t('rootCause')}</dt>
        <dd>{lesson.rootCause}</dd>
        <dt>{t('check')}</dt>
        <dd>{lesson.check}</dd>
      </dl>
    </article>
  );
};
