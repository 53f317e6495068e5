import type { CookieOptions, Request } from 'express';
import type { ApiConfig } from '../config.js';

/** The prefix makes browsers refuse a cookie that another host of the domain has planted; they ask for https with it. */
export function sessionCookieName(config: ApiConfig): string {
  return isSecure(config) ? '__Host-lab-session' : 'lab-session';
}

export function sessionCookie(config: ApiConfig): CookieOptions {
  return {
    httpOnly: true,
    sameSite: 'strict',
    secure: isSecure(config),
    path: '/',
    maxAge: config.sessionHours * 3_600_000,
  };
}

export function isSecure({ publicUrl }: ApiConfig): boolean {
  return publicUrl?.startsWith('https:') ?? false;
}

/** @returns the cookie's value; null when there is none, or something unlike what we hand out */
export function readCookie(request: Request, name: string): string | null {
  for (const pair of (request.headers.cookie ?? '').split(';')) {
    const [key, value] = pair.trim().split('=', 2);
    if (key === name && value && /^[\w-]{20,200}$/.test(value)) return value;
  }
  return null;
}
