import '@mantine/core/styles.css';
import '@mantine/dates/styles.css';
import '@mantine/notifications/styles.css';
import './global.css';
import './print.css';
import { MantineProvider } from '@mantine/core';
import { Notifications } from '@mantine/notifications';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { I18nextProvider } from 'react-i18next';
import { i18n, startLanguages } from './i18n.ts';
import { queryClient } from './query-client.ts';
import { router } from './router.tsx';
import { watchForLostSession } from './session-lost.ts';
import { reloadWhenStale } from './stale-version.ts';
import { cssVariables, theme } from './theme.ts';

const container = document.getElementById('root');
if (!container) throw new Error('index.html has no #root.');

await startLanguages();
watchForLostSession(queryClient);
reloadWhenStale();

createRoot(container).render(
  <StrictMode>
    <I18nextProvider i18n={i18n}>
      <MantineProvider theme={theme} cssVariablesResolver={cssVariables} forceColorScheme="light">
        <QueryClientProvider client={queryClient}>
          <Notifications position="bottom-center" />
          <RouterProvider router={router} />
        </QueryClientProvider>
      </MantineProvider>
    </I18nextProvider>
  </StrictMode>,
);
