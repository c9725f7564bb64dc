import { ActionIcon, Button, FileButton } from '@mantine/core';
import { IconCamera, IconX } from '@tabler/icons-react';
import { useEffect, useMemo } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { photoTypes } from '../send-photo.ts';
import type { DraftPhoto } from './draft.ts';
import classes from './record.module.css';

interface Props {
  photos: readonly DraftPhoto[];
  onChange: (photos: DraftPhoto[]) => void;
}

export const PhotoStep = ({ photos, onChange }: Props) => {
  const { t } = useTranslation('failures');
  const add = (file: File | null) => {
    if (file) onChange([...photos, { id: uuidv7(), blob: file }]);
  };
  return (
    <div className={classes.step}>
      <FileButton onChange={add} accept={photoTypes} capture="environment">
        {(props) => (
          <Button {...props} size="xl" variant="default" fullWidth leftSection={<IconCamera aria-hidden />}>
            {t('record.photo')}
          </Button>
        )}
      </FileButton>
      {photos.length > 0 && (
        <ul className={classes.photos}>
          {photos.map((photo, index) => (
            <li key={photo.id}>
              <Preview blob={photo.blob} alt={t('record.photoNumber', { number: index + 1 })} />
              <ActionIcon
                size={48}
                variant="filled"
                aria-label={t('record.dropPhoto', { number: index + 1 })}
                onClick={() => onChange(photos.filter(({ id }) => id !== photo.id))}
              >
                <IconX aria-hidden />
              </ActionIcon>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
};

const Preview = ({ blob, alt }: { blob: Blob; alt: string }) => {
  const address = useMemo(() => URL.createObjectURL(blob), [blob]);
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  return <img src={address} alt={alt} />;
};
