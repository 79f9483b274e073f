'use client';

import { useEffect, useRef } from 'react';
import styles from './camera.module.css';
import { pictureReader } from './read-picture';

type CameraViewProps = { onCode: (code: string) => void; onStop: (why: string) => void };

/** How often a picture is looked at: often enough to seem at once, seldom enough for a warm phone. */
const EVERY_MS = 180;

/** What the camera sees, until a code is in it. */
export function CameraView({ onCode, onStop }: CameraViewProps) {
  const video = useRef<HTMLVideoElement>(null);
  const asked = useRef({ onCode, onStop });
  useEffect(() => {
    asked.current = { onCode, onStop };
  });
  useEffect(() => {
    const ended = new AbortController();
    const element = video.current;
    if (!element) return;
    // Wherever it was asked for, what the camera sees must be seen.
    element.scrollIntoView({ block: 'center' });
    watch(element, ended.signal)
      .then((code) => code !== null && asked.current.onCode(code))
      .catch((error) => !ended.signal.aborted && asked.current.onStop(whyNot(error)));
    return () => ended.abort();
  }, []);
  return (
    <div className={styles.view}>
      <video ref={video} muted playsInline aria-label="What the camera sees" />
      <p className={styles.aim}>Hold the code inside the frame.</p>
    </div>
  );
}

/** Looks through the camera until there is a code. Null when it was ended before. */
async function watch(video: HTMLVideoElement, ended: AbortSignal): Promise<string | null> {
  const stream = await navigator.mediaDevices.getUserMedia({
    video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
  });
  try {
    if (ended.aborted) return null;
    const read = await pictureReader();
    video.srcObject = stream;
    await video.play();
    while (!ended.aborted) {
      const code = video.videoWidth > 0 ? await read(video, video.videoWidth, video.videoHeight) : null;
      if (code !== null) return code;
      await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
    }
    return null;
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}

function whyNot(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError') {
    return 'The browser did not let this page use the camera. Allow it in the browser’s settings for this page, or take a photo.';
  }
  if (name === 'NotFoundError' || name === 'OverconstrainedError')
    return 'There is no camera here. Take a photo elsewhere and choose it, or type the code.';
  return 'The camera could not be started. Perhaps another program uses it: close that, take a photo, or type the code.';
}
