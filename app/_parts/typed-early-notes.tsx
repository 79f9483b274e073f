import { pageNonce } from '@/lib/door/page-nonce';

/*
 * Until a page's scripts listen, it can be typed into already; on a slow phone for seconds. React then shows what it knows
 * of, and what was typed meanwhile is gone. So it is noted from the first moment on, and typed again by `TypedEarly`. What
 * is sent is no longer being typed: a form that is emptied then stays empty.
 */
const NOTE_WHAT_IS_TYPED = `
  window.typedEarly = new Map();
  for (const kind of ['input', 'change']) addEventListener(kind, ({ target }) => {
    const isTicked = target.type === 'checkbox' || target.type === 'radio';
    window.typedEarly?.set(target, isTicked ? target.checked : target.value);
  }, true);
  addEventListener('submit', () => window.typedEarly?.clear(), true);
`;

/** Stands before everything that can be typed into. */
export async function TypedEarlyNotes() {
  return (
    <script
      nonce={await pageNonce()}
      suppressHydrationWarning
      // biome-ignore lint/security/noDangerouslySetInnerHtml: the text stands here, and has nothing of anybody's in it.
      dangerouslySetInnerHTML={{ __html: NOTE_WHAT_IS_TYPED }}
    />
  );
}
