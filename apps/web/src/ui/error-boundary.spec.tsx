import { jest } from '@jest/globals';
import { render, screen } from '@testing-library/react';
import { ErrorBoundary } from './error-boundary.js';

function Broken(): never {
  throw new TypeError('shifts is undefined');
}

describe('a screen that crashes', () => {
  // React and the boundary write the crash to the console, which is no failure here.
  beforeEach(() => void jest.spyOn(console, 'error').mockImplementation(() => undefined));
  afterEach(() => jest.restoreAllMocks());

  it('says so, offers a way back and what to report, and leaves the rest of the page alone', () => {
    render(
      <>
        <nav>Desks</nav>
        <ErrorBoundary what="This screen" path="/planning/roster">
          <Broken />
        </ErrorBoundary>
      </>,
    );
    expect(screen.getByRole('navigation').textContent).toBe('Desks');
    const alert = screen.getByRole('alert');
    expect(alert.textContent).toContain('This screen stopped working');
    expect(alert.textContent).toContain('TypeError: shifts is undefined');
    expect(screen.getByRole('link', { name: 'Go to the start page' }).getAttribute('href')).toBe('/');
    expect(screen.getByRole('button', { name: 'Reload this page' })).toBeTruthy();
  });

  it('is tried again at another address', () => {
    const inside = (path: string) => (
      <ErrorBoundary what="This screen" path={path}>
        {path === '/planning/roster' ? <Broken /> : <h1>Intake</h1>}
      </ErrorBoundary>
    );
    const { rerender } = render(inside('/planning/roster'));
    rerender(inside('/planning/intake'));
    expect(screen.queryByRole('alert')).toBeNull();
    expect(screen.getByRole('heading', { name: 'Intake' })).toBeTruthy();
  });
});
