import { useEffect, useState } from 'react';

const SETTLE_MS = 200;

/** What is typed into a search box, and what it says once typing has paused. */
export function useSearch(): [text: string, setText: (text: string) => void, settled: string] {
  const [text, setText] = useState('');
  const [settled, setSettled] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text.trim()), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return [text, setText, settled];
}
