import { useQuery } from '@tanstack/react-query';
import { Navigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { Editor } from './editor.tsx';
import { whatIfQuery } from './queries.ts';
import { editWhatIfRoute, filterOf } from './routes.ts';

export const NewWhatIfPage = () => {
  const { t } = useTranslation('what-if');
  return (
    <>
      <PageHead title={t('new.title')}>{t('new.lead')}</PageHead>
      <Editor />
    </>
  );
};

export const EditWhatIfPage = () => {
  const { t } = useTranslation('what-if');
  const { id } = editWhatIfRoute.useParams();
  const search = editWhatIfRoute.useSearch();
  const result = useQuery(whatIfQuery(id));
  return (
    <QueryBoundary query={result} height={40}>
      {(whatIf) =>
        search.plant ? (
          <>
            <PageHead title={whatIf.name}>{t('edit.lead')}</PageHead>
            <Editor key={whatIf.version} kept={whatIf} />
          </>
        ) : (
          <Navigate to={editWhatIfRoute.to} params={{ id }} search={filterOf(whatIf.query)} replace />
        )
      }
    </QueryBoundary>
  );
};
