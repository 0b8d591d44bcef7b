/*
 * Writes down what a process does to one session's files, in order: each write with its bytes, each truncation, each
 * fsync, and what it says on standard output. From this log the state of the disk after a power cut at any moment can
 * be made: what was not synced by then may be lost. Preloaded; WRITELOG names the log, WRITELOG_FILE the session.
 *
 * An entry: operation (1 byte), length of the name (2), offset (8), length (8), name, bytes; little-endian.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static int log_fd = -1;
static ssize_t (*real_write)(int, const void *, size_t);

static void *real(const char *name) { return dlsym(RTLD_NEXT, name); }

static const char *name_of(int fd, char *path, size_t room) {
  const char *file = getenv("WRITELOG_FILE");
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t n = readlink(link, path, room - 1);
  if (!file || n < 0) return NULL;
  path[n] = 0;
  if (strcmp(path, file) == 0) return path;
  size_t head = strlen(file);
  return strncmp(path, file, head) == 0 && strcmp(path + head, "-wal") == 0 ? path : NULL;
}

static void note(char op, const char *name, int64_t offset, int64_t length, const void *bytes) {
  uint16_t name_length = (uint16_t)strlen(name);
  char head[19];
  if (!real_write) real_write = real("write");
  if (log_fd < 0) log_fd = open(getenv("WRITELOG"), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0644);
  head[0] = op;
  memcpy(head + 1, &name_length, 2);
  memcpy(head + 3, &offset, 8);
  memcpy(head + 11, &length, 8);
  if (real_write(log_fd, head, 19) != 19 || real_write(log_fd, name, name_length) != name_length) abort();
  if (bytes && real_write(log_fd, bytes, (size_t)length) != length) abort();
}

ssize_t pwrite64(int fd, const void *bytes, size_t count, off_t offset) {
  static ssize_t (*next)(int, const void *, size_t, off_t);
  char path[4096];
  if (!next) next = real("pwrite64");
  const char *name = name_of(fd, path, sizeof path);
  if (!name) return next(fd, bytes, count, offset);
  pthread_mutex_lock(&lock);
  ssize_t n = next(fd, bytes, count, offset);
  if (n > 0) note('W', name, offset, n, bytes);
  pthread_mutex_unlock(&lock);
  return n;
}

ssize_t pwrite(int fd, const void *bytes, size_t count, off_t offset) { return pwrite64(fd, bytes, count, offset); }

ssize_t write(int fd, const void *bytes, size_t count) {
  char path[4096];
  if (!real_write) real_write = real("write");
  const char *name = fd == 1 ? "out" : name_of(fd, path, sizeof path);
  if (!name) return real_write(fd, bytes, count);
  pthread_mutex_lock(&lock);
  off_t offset = fd == 1 ? 0 : lseek(fd, 0, SEEK_CUR);
  ssize_t n = real_write(fd, bytes, count);
  if (n > 0) note(fd == 1 ? 'A' : 'W', name, offset, n, bytes);
  pthread_mutex_unlock(&lock);
  return n;
}

static int sync_with(const char *call, int fd) {
  int (*next)(int) = real(call);
  char path[4096];
  const char *name = name_of(fd, path, sizeof path);
  int result = next(fd);
  if (name && result == 0) {
    pthread_mutex_lock(&lock);
    note('S', name, 0, 0, NULL);
    pthread_mutex_unlock(&lock);
  }
  return result;
}

int fsync(int fd) { return sync_with("fsync", fd); }
int fdatasync(int fd) { return sync_with("fdatasync", fd); }

static int truncate_with(const char *call, int fd, off_t length) {
  int (*next)(int, off_t) = real(call);
  char path[4096];
  const char *name = name_of(fd, path, sizeof path);
  int result = next(fd, length);
  if (name && result == 0) {
    pthread_mutex_lock(&lock);
    note('T', name, length, 0, NULL);
    pthread_mutex_unlock(&lock);
  }
  return result;
}

int ftruncate(int fd, off_t length) { return truncate_with("ftruncate", fd, length); }
int ftruncate64(int fd, off_t length) { return truncate_with("ftruncate64", fd, length); }
