'use client';

import { CameraScan } from '../../_parts/camera-scan';

/** Opens what a code stands for. What it stands for is the server's to say, so that typing and scanning agree. */
const open = (code: string): void => location.assign(`/shelf/scan?${new URLSearchParams({ code })}`);

/** Reads a code with the camera, and opens what it stands for. */
export const OpenScanned = () => <CameraScan onCode={open} />;
