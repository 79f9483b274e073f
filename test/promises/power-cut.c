/*
 * Stands between a program and its disk: whatever the program asks to be on the disk is copied beside the file as
 * FILE.on-disk at that moment. A test then cuts the power by ending the program and putting those copies in the files'
 * places, so that all that was never asked to be on the disk is gone.
 *
 * Only files below the folder named by POWER_CUT_FOLDER are watched.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/sendfile.h>
#include <sys/stat.h>
#include <unistd.h>

static void copy_to_disk(int file) {
  const char *folder = getenv("POWER_CUT_FOLDER");
  char link[64], path[4096], half[4200], whole[4200];
  snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (folder == NULL || length <= 0) return;
  path[length] = 0;
  if (strncmp(path, folder, strlen(folder)) != 0) return;
  struct stat facts;
  if (fstat(file, &facts) != 0 || !S_ISREG(facts.st_mode)) return;
  snprintf(half, sizeof half, "%s.half", path);
  snprintf(whole, sizeof whole, "%s.on-disk", path);
  int from = open(path, O_RDONLY), to = open(half, O_WRONLY | O_CREAT | O_TRUNC, 0600);
  off_t offset = 0;
  while (offset < facts.st_size && sendfile(to, from, &offset, facts.st_size - offset) > 0) {
  }
  close(from);
  close(to);
  rename(half, whole);
}

int fsync(int file) {
  int (*real)(int) = dlsym(RTLD_NEXT, "fsync");
  int answer = real(file);
  if (answer == 0) copy_to_disk(file);
  return answer;
}

int fdatasync(int file) {
  int (*real)(int) = dlsym(RTLD_NEXT, "fdatasync");
  int answer = real(file);
  if (answer == 0) copy_to_disk(file);
  return answer;
}

/* A file that gets another name keeps what the disk holds of it. */
int rename(const char *from, const char *to) {
  int (*real)(const char *, const char *) = dlsym(RTLD_NEXT, "rename");
  int answer = real(from, to);
  char kept[4200], named[4200];
  snprintf(kept, sizeof kept, "%s.on-disk", from);
  snprintf(named, sizeof named, "%s.on-disk", to);
  if (answer == 0 && getenv("POWER_CUT_FOLDER") != NULL) real(kept, named);
  return answer;
}
