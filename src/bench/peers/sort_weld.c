/* A plain C peer: reads binary STL from a mapped file, merges exactly equal corners by open addressing,
 * matches half-edges by a counting sort on the lower vertex of their edge, counts faults, sums the area.
 * One thread. usage: sort_weld FILE.stl        build: cc -O3 -march=native sort_weld.c -o sort_weld -lm */
#include <fcntl.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
static uint64_t mix(uint64_t h) { h ^= h >> 32; h *= 0xd6e8feb86659fd93ull; return h ^ h >> 32; }
int main(int n, char **arg) {
  if (n != 2) { fprintf(stderr, "usage: sort_weld FILE.stl\n"); return 2; }
  int fd = open(arg[1], O_RDONLY); struct stat st; if (fd < 0 || fstat(fd, &st)) { perror(arg[1]); return 3; }
  const unsigned char *map = mmap(NULL, st.st_size, PROT_READ, MAP_PRIVATE | MAP_POPULATE, fd, 0);
  uint32_t count; memcpy(&count, map + 80, 4);
  if (84 + 50ull * count != (uint64_t)st.st_size) { fprintf(stderr, "not a binary STL\n"); return 3; }
  /* Weld. The table holds vertices, of which a closed mesh has half as many as faces. */
  uint64_t cap = 1024; while (cap < count) cap <<= 1;
  uint32_t *slot = calloc(cap, 4), *corner = malloc(12ul * count), m = 0, room = count / 2 + 1024;
  float *v = malloc(12ul * room);
  double area = 0;
  for (uint32_t i = 0; i < count; i++) {
    float q[9]; memcpy(q, map + 84 + 50ul * i + 12, 36);
    for (int c = 0; c < 3; c++) {
      float *w = q + 3 * c; for (int d = 0; d < 3; d++) w[d] += 0.0f;
      uint32_t b[3]; memcpy(b, w, 12);
      uint64_t h = mix((b[0] | (uint64_t)b[1] << 32) * 0x9e3779b97f4a7c15ull ^ b[2] * 0xc2b2ae3d27d4eb4full) & (cap - 1);
      while (slot[h] && memcmp(v + 3ul * (slot[h] - 1), w, 12)) h = (h + 1) & (cap - 1);
      if (!slot[h]) {
        if (m == room) v = realloc(v, 12ul * (room += room / 2));
        memcpy(v + 3ul * m, w, 12); slot[h] = ++m;
        if (2ul * m > cap) {
          free(slot); cap <<= 1; slot = calloc(cap, 4);
          for (uint32_t k = 0; k < m; k++) { uint32_t e[3]; memcpy(e, v + 3ul * k, 12);
            uint64_t g = mix((e[0] | (uint64_t)e[1] << 32) * 0x9e3779b97f4a7c15ull ^ e[2] * 0xc2b2ae3d27d4eb4full) & (cap - 1);
            while (slot[g]) g = (g + 1) & (cap - 1); slot[g] = k + 1; }
          h = mix((b[0] | (uint64_t)b[1] << 32) * 0x9e3779b97f4a7c15ull ^ b[2] * 0xc2b2ae3d27d4eb4full) & (cap - 1);
          while (slot[h] != m) h = (h + 1) & (cap - 1);
        }
      }
      corner[3ul * i + c] = slot[h] - 1;
    }
    double ax = (double)q[3] - q[0], ay = (double)q[4] - q[1], az = (double)q[5] - q[2];
    double bx = (double)q[6] - q[0], by = (double)q[7] - q[1], bz = (double)q[8] - q[2];
    double nx = ay * bz - az * by, ny = az * bx - ax * bz, nz = ax * by - ay * bx;
    area += sqrt(nx * nx + ny * ny + nz * nz) / 2;
  }
  free(slot);
  /* Half-edges, sorted by the lower vertex of their edge: counts, places, then pairs within each vertex. */
  uint64_t h = 3ul * count;
  uint32_t *first = calloc(m + 2ul, 4), *half = malloc(4 * h); int32_t *twin = malloc(4 * h);
  for (uint64_t i = 0; i < h; i++) { uint32_t a = corner[i], b = corner[i % 3 == 2 ? i - 2 : i + 1]; first[(a < b ? a : b) + 2]++; }
  for (uint32_t k = 2; k < m + 2; k++) first[k] += first[k - 1];
  for (uint64_t i = 0; i < h; i++) { uint32_t a = corner[i], b = corner[i % 3 == 2 ? i - 2 : i + 1]; half[first[(a < b ? a : b) + 1]++] = i; }
  uint64_t open = 0, branching = 0, flipped = 0;
  memset(twin, 255, 4 * h);
  for (uint32_t k = 0; k < m; k++)
    for (uint32_t i = first[k]; i < first[k + 1]; i++) {
      uint32_t g = half[i]; if (twin[g] != -1) continue;
      uint32_t far = corner[g] ^ corner[g % 3 == 2 ? g - 2 : g + 1] ^ k, same = 0, last = 0;
      for (uint32_t j = i + 1; j < first[k + 1]; j++) { uint32_t o = half[j]; if ((corner[o] ^ corner[o % 3 == 2 ? o - 2 : o + 1] ^ k) == far) { same++; last = o; if (same > 1) twin[o] = -2; } }
      if (same == 0) open++; else if (same == 1) { twin[g] = last; twin[last] = g; flipped += corner[g] == corner[last]; } else { branching++; twin[g] = -2;
        for (uint32_t j = i + 1; j < first[k + 1]; j++) { uint32_t o = half[j]; if ((corner[o] ^ corner[o % 3 == 2 ? o - 2 : o + 1] ^ k) == far) twin[o] = -2; } }
    }
  printf("%u vertices, %u triangles, %lu open, %lu branching, %lu flipped edges, area %.9f\n", m, count, open, branching, flipped, area);
  return 0;
}
