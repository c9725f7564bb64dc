import { Navigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';
import { GroupForm } from './group-form.tsx';
import { isKindName } from './kind-names.ts';
import { KindNav } from './kind-nav.tsx';
import { viewOf } from './kinds.ts';
import classes from './master-data.module.css';
import { kindRoute } from './routes.ts';
import { RowsSection } from './rows-section.tsx';
import { StandardCostsSection } from './standard-costs-section.tsx';

export const MasterDataPage = () => {
  const { t } = useTranslation('master-data');
  const { kind } = kindRoute.useParams();
  if (!isKindName(kind)) return <Navigate to="/master-data/$kind" params={{ kind: 'plants' }} replace />;
  return (
    <div className={classes.page}>
      <KindNav current={kind} />
      <div className={classes.kind}>
        <PageHead title={t(`kind.${kind}.title`)}>{t(`kind.${kind}.lead`)}</PageHead>
        {kind === 'group' && <GroupForm />}
        {kind === 'standard-costs' && <StandardCostsSection />}
        {kind !== 'group' && kind !== 'standard-costs' && <RowsSection key={kind} view={viewOf(kind)} />}
      </div>
    </div>
  );
};
