import { describe, expect, it } from 'vitest';
import { addressOf, reachOf } from './addresses.ts';

const own = { name: 'Jetty-Pi', addresses: ['192.0.2.7', '2001:db8::7'] };

describe('where the workbench may be asked', () => {
  it.each(['127.0.0.1', 'localhost', '::1', '127.0.0.9'])('is this machine alone at %s', (host) => {
    const reach = reachOf(host, own);
    expect(reach).toMatchObject({ isLoopback: true, isAnyAddress: false });
    expect(reach.hosts).not.toContain('jetty-pi');
  });

  it.each(['0.0.0.0', '::'])('is every network at %s, by its own names and by number', (host) => {
    const reach = reachOf(host, own);
    expect(reach).toMatchObject({ isLoopback: false, isAnyAddress: true });
    expect(reach.hosts).toEqual(expect.arrayContaining(['jetty-pi', 'jetty-pi.local', 'localhost']));
    expect(reach.shown).toEqual(['192.0.2.7', '[2001:db8::7]']);
  });

  it('is one address when that is named, and names that only begin like loopback are none', () => {
    expect(reachOf('192.0.2.7', own)).toMatchObject({ isLoopback: false, hosts: ['192.0.2.7'] });
    expect(reachOf('127.example', own).isLoopback).toBe(false);
  });
});

it('keeps a token behind the sign that browsers do not send', () => {
  expect(addressOf('[::1]', '80', null)).toBe('http://[::1]:80/');
  expect(addressOf('192.0.2.7', '8080', 'a b')).toBe('http://192.0.2.7:8080/#token=a%20b');
});
