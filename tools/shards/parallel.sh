#!/bin/sh
# Runs a study in shards with GNU parallel, a job each, and merges them:
#
#   parallel.sh SHARDS OUT simulate SCENARIO [options]
#   parallel.sh SHARDS OUT compare SCENARIO WHATIFS [options]
#
# After an interruption give the same command again: shards that are done are not run again, those cut off go on.
# RATEPROOF: how the program is called, default rateproof. PARALLEL: more options of parallel, such as --jobs 8.
set -eu
shards=$1 out=$2 study=$3
shift 3
: "${RATEPROOF:=rateproof}"
mkdir -p "$out.shards"
# RATEPROOF may be several words, so it is not quoted.
seq "$shards" | parallel --quote --joblog "$out.shards/jobs.log" --resume --resume-failed \
  $RATEPROOF "$study" --workers 1 --quiet "$@" --shard "{}/$shards" --out "$out.shards/{}"
# Names that are numbers: the folders, not their journals nor the log.
set --
for i in $(seq "$shards"); do set -- "$@" "$out.shards/$i"; done
exec $RATEPROOF merge "$@" --out "$out"
