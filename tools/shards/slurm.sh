#!/bin/sh
#SBATCH --job-name=rateproof
#SBATCH --array=1-4
#SBATCH --cpus-per-task=1
#SBATCH --requeue
# Runs a study in shards as a Slurm job array, a shard each task, into a folder that all nodes see:
#
#   sbatch slurm.sh OUT simulate SCENARIO [options]
#   sbatch slurm.sh OUT compare SCENARIO WHATIFS [options]
#   rateproof merge OUT.shards/1 OUT.shards/2 OUT.shards/3 OUT.shards/4 --out OUT
#
# `sbatch --array=1-16 slurm.sh ..` for another number of shards. A task that is requeued or submitted again goes on where it was
# cut off, and does nothing where it was done. RATEPROOF: how the program is called, default rateproof.
set -eu
out=$1 study=$2
shift 2
mkdir -p "$out.shards"
# In place of this shell, so that signals reach it. RATEPROOF may be several words.
exec ${RATEPROOF:-rateproof} "$study" --workers "${SLURM_CPUS_PER_TASK:-1}" "$@" \
  --shard "$SLURM_ARRAY_TASK_ID/$SLURM_ARRAY_TASK_COUNT" --out "$out.shards/$SLURM_ARRAY_TASK_ID"
