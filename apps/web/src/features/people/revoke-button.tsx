import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { revokeToken, type Token } from '#contracts/people.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { call } from '#web/ui/http.ts';
import { useForgetPeople } from './queries.ts';

export const RevokeButton = ({ token }: { token: Token }) => {
  const { t } = useTranslation('people');
  const forget = useForgetPeople();
  const revoke = useMutation({
    mutationFn: () => call(revokeToken, { params: { id: token.id } }),
    onSuccess: forget,
  });
  return (
    <ConfirmButton
      size="compact-md"
      question={t('tokens.revokeQuestion', { name: token.name })}
      confirm={t('tokens.revoke')}
      onConfirm={() => revoke.mutateAsync()}
      pending={revoke.isPending}
      error={revoke.error}
    >
      {t('tokens.revoke')}
    </ConfirmButton>
  );
};
