import '@fontsource/atkinson-hyperlegible/latin-400.css';
import '@fontsource/atkinson-hyperlegible/latin-700.css';
import '@fontsource/atkinson-hyperlegible-mono/latin-400.css';
import './ui/tokens.css';
import './ui/elements.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRoot } from 'react-dom/client';
import { ErrorBoundary } from './ui/error-boundary.js';
import { App } from './app.js';
import { showTheme, themeNow } from './ui/theme.js';
import { Toasts } from './ui/toasts.js';
import { ConnectionError } from './api-client/call.js';

const FRESH_MS = 2_000;
const TRIES = 3;

showTheme(themeNow());

const client = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: FRESH_MS,
      retry: (count, error) => error instanceof ConnectionError && count < TRIES,
      throwOnError: false,
    },
  },
});

const page = document.getElementById('page');
if (!page) throw new Error('index.html has no element with id "page"');
createRoot(page).render(
  <QueryClientProvider client={client}>
    <Toasts>
      <ErrorBoundary what="Loadtrain" path="/">
        <App />
      </ErrorBoundary>
    </Toasts>
  </QueryClientProvider>,
);
