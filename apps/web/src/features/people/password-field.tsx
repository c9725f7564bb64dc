import { Button, PasswordInput, type PasswordInputProps } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import classes from './people.module.css';

/** Without the letters and figures that are misread when dictated. */
const alphabet = 'abcdefghjkmnpqrstuvwxyz23456789';
/** 16 characters of 31: about 79 bits. */
const suggestion = (): string =>
  Array.from({ length: 16 }, () => {
    let byte: number;
    do byte = crypto.getRandomValues(new Uint8Array(1))[0] as number;
    while (byte >= alphabet.length * 8);
    return alphabet[byte % alphabet.length];
  }).join('');

interface Props extends Omit<PasswordInputProps, 'onChange'> {
  value?: string;
  onChange?: (password: string) => void;
}

/** A first password for somebody else: typed, or made here. They choose their own at sign-in. */
export const PasswordField = ({ value = '', onChange = () => {}, ...input }: Props) => {
  const { t } = useTranslation('people');
  return (
    <div className={classes.grant} style={{ gridTemplateColumns: 'minmax(0, 1fr) auto' }}>
      <PasswordInput
        label={t('firstPassword')}
        description={t('firstPasswordHelp')}
        required
        autoComplete="new-password"
        visibilityToggleButtonProps={{ 'aria-label': t('showPassword') }}
        inputWrapperOrder={['label', 'description', 'input', 'error']}
        {...input}
        value={value}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      <Button variant="default" onClick={() => onChange(suggestion())}>
        {t('makePassword')}
      </Button>
    </div>
  );
};
