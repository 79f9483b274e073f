/**
 * Runs in the browser before any page does. Contracts are read there without making functions out of text, which the
 * pages' own content policy refuses: even trying it would be reported.
 */
const settings: { jitless?: boolean } = Reflect.get(globalThis, '__zod_globalConfig') ?? {};
settings.jitless = true;
Reflect.set(globalThis, '__zod_globalConfig', settings);
