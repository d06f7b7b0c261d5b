import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One body as the reference library of the format (Debian package lib3mf-dev) read it, in strict mode. */
export interface ReadBody {
  readonly name: string;
  readonly isManifold: boolean;
  readonly triangles: number;
  /** [mm³] */
  readonly volume: number;
}

/** A 3MF file as that library read it. */
export interface ReadThreeMf {
  readonly warnings: number;
  /** 1 is the library's number for millimetres. */
  readonly unit: number;
  readonly bodies: readonly ReadBody[];
  /** Parts to be printed. */
  readonly items: number;
}

const PROGRAM = `
#include <cstdio>
#include <cstdlib>
#include <vector>
#include "Model/COM/NMR_DLLInterfaces.h"
using namespace NMR;
static void need(LIB3MFRESULT result, const char *what) {
  if (result != 0) { std::fprintf(stderr, "%s: %ld\\n", what, (long)result); std::exit(1); }
}
static double volume(PLib3MFModelMeshObject *mesh, DWORD corners, DWORD triangles) {
  std::vector<MODELMESHVERTEX> v(corners);
  std::vector<MODELMESHTRIANGLE> t(triangles);
  need(lib3mf_meshobject_getvertices(mesh, v.data(), corners, nullptr), "vertices");
  need(lib3mf_meshobject_gettriangleindices(mesh, t.data(), triangles, nullptr), "triangles");
  double six = 0;
  for (auto &f : t) {
    auto *a = v[f.m_nIndices[0]].m_fPosition, *b = v[f.m_nIndices[1]].m_fPosition, *c = v[f.m_nIndices[2]].m_fPosition;
    six += a[0] * (double(b[1]) * c[2] - double(b[2]) * c[1]) + a[1] * (double(b[2]) * c[0] - double(b[0]) * c[2]) +
           a[2] * (double(b[0]) * c[1] - double(b[1]) * c[0]);
  }
  return six / 6;
}
int main(int, char **args) {
  PLib3MFModel *model; PLib3MFModelReader *reader; PLib3MFModelResourceIterator *each; PLib3MFModelBuildItemIterator *items;
  DWORD warnings, unit; BOOL more;
  need(lib3mf_createmodel(&model), "model");
  need(lib3mf_model_queryreader(model, "3mf", &reader), "reader");
  need(lib3mf_reader_setstrictmodeactive(reader, 1), "strict");
  need(lib3mf_reader_readfromfileutf8(reader, args[1]), "read");
  need(lib3mf_reader_getwarningcount(reader, &warnings), "warnings");
  need(lib3mf_model_getunit(model, &unit), "unit");
  need(lib3mf_model_getbuilditems(model, &items), "items");
  int count = 0;
  while (lib3mf_builditemiterator_movenext(items, &more) == 0 && more) count++;
  std::printf("%u\\t%u\\t%d\\n", (unsigned)warnings, (unsigned)unit, count);
  need(lib3mf_model_getmeshobjects(model, &each), "objects");
  while (lib3mf_resourceiterator_movenext(each, &more) == 0 && more) {
    PLib3MFModelResource *resource; DWORD corners, triangles; BOOL closed; char name[256]; ULONG length;
    need(lib3mf_resourceiterator_getcurrent(each, &resource), "current");
    auto *mesh = (PLib3MFModelMeshObject *)resource;
    need(lib3mf_meshobject_getvertexcount(mesh, &corners), "corners");
    need(lib3mf_meshobject_gettrianglecount(mesh, &triangles), "triangles");
    need(lib3mf_meshobject_ismanifoldandoriented(mesh, &closed), "closed");
    need(lib3mf_object_getnameutf8((PLib3MFModelObjectResource *)resource, name, 256, &length), "name");
    std::printf("%s\\t%d\\t%u\\t%.6f\\n", name, (int)closed, (unsigned)triangles, volume(mesh, corners, triangles));
  }
}
`;

/** Reads 3MF files; `close` when done. */
export interface ThreeMfReader {
  read(bytes: Uint8Array): ReadThreeMf;
  close(): void;
}

/** Compiles the reader into a folder of its own. Throws when `g++` or `lib3mf-dev` is missing. */
export function threeMfReader(): ThreeMfReader {
  const folder = mkdtempSync(join(tmpdir(), 'three-mf-'));
  const [source, program, file] = ['read.cpp', 'read', 'model.3mf'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  writeFileSync(source, PROGRAM);
  execFileSync('g++', ['-o', program, source, '-I/usr/include/lib3mf', '-l3MF']);
  return {
    read(bytes) {
      writeFileSync(file, bytes);
      const [head, ...rows] = execFileSync(program, [file], { encoding: 'utf8' }).trim().split('\n');
      const [warnings, unit, items] = head!.split('\t').map(Number) as [number, number, number];
      const bodies = rows.map((row): ReadBody => {
        const [name, closed, triangles, volume] = row.split('\t');
        return {
          name: name!,
          isManifold: closed === '1',
          triangles: Number(triangles),
          volume: Number(volume),
        };
      });
      return { warnings, unit, items, bodies };
    },
    close: () => rmSync(folder, { recursive: true }),
  };
}
