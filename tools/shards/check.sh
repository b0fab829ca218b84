#!/bin/sh
# Checks that shards run by GNU parallel, and by a Slurm job array over two nodes, merge to the very bytes of one run, also after a
# task was killed. Starts a Slurm of its own on this machine, in a temporary folder, and stops it. Needs parallel, slurm-wlm and
# munge, root (as slurmd does) and a built program:
#
#   npm run build && tools/shards/check.sh [SCENARIO [REPLICATIONS]]
#
# PORT: the first of three free ports, default 17817.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$(dirname "$here")")
scenario=$(realpath "${1:-$root/scenarios/rescue-tender.yaml}") replications=${2:-100} port=${PORT:-17817}
export RATEPROOF="node $root/dist/cli/main.js"
base=$(mktemp -d)
. "$here/private-slurm.sh"

stop() { end_slurm; cd / && rm -rf "$base"; }
trap stop EXIT
trap 'exit 130' INT TERM

fail() { echo "FAILED: $*" >&2; for file in "$base"/log/* "$base"/task.*; do echo "== $file"; tail -n 20 "$file"; done >&2 || true; exit 1; }
same() { diff -r "$base/${2:-one}" "$base/$1" || fail "$1 is not what one run gives"; echo "$1: the very bytes of one run"; }
# Exit code 3 is a finding of the scenario.
allow_finding() { "$@" || [ $? -eq 3 ]; }

cd "$base"
allow_finding $RATEPROOF simulate "$scenario" --replications "$replications" --seed shards --quiet --out one > one.txt

# Waits until a shard has some replications behind it.
begun() { for _ in $(seq 3000); do [ "$(stat -c %s "$1.journal" 2> /dev/null || echo 0)" -gt 100000 ] && return; sleep 0.1; done; fail "$1 was not begun"; }

echo "GNU parallel: a shard killed in the middle, then all four, then the same command again"
$RATEPROOF simulate "$scenario" --replications "$replications" --seed shards --quiet --workers 1 --shard 2/4 --out parallel.shards/2 &
begun parallel.shards/2
kill -9 $!
ls parallel.shards
[ -d parallel.shards/2 ] && fail "shard 2 was to be killed, but was done before: ask for more replications"
for turn in first second; do
  allow_finding "$here/parallel.sh" 4 parallel simulate "$scenario" --replications "$replications" --seed shards > parallel.txt
  [ "$(wc -l < parallel.shards/jobs.log)" -eq 5 ] || fail "expected four jobs in all after the $turn turn"
  same parallel
  diff one.txt parallel.txt || fail "the answer printed is another"
  rm -r parallel
done

echo "GNU parallel: compare of the demo"
demo="$root/scenarios/rescue-tender"
allow_finding $RATEPROOF compare "$demo.yaml" "$demo/what-ifs.yaml" --replications 3 --quiet --out compared > compared.txt
allow_finding "$here/parallel.sh" 3 parallel-compare compare "$demo.yaml" "$demo/what-ifs.yaml" --replications 3 > parallel-compare.txt
same parallel-compare compared
diff compared.txt parallel-compare.txt || fail "the answer printed is another"

echo "Slurm: one controller, two nodes, an array of four"
start_slurm
submit() { sbatch --parsable "$@" --output="$base/task.%a" "$here/slurm.sh" "$base/slurm" simulate "$scenario" --replications "$replications" --seed shards; }
job=$(submit)
begun slurm.shards/2
scancel --signal=KILL --full "${job}_2"
for _ in $(seq 600); do [ -z "$(squeue -h -j "$job" 2> /dev/null)" ] && break; sleep 0.5; done
ls slurm.shards
[ -d slurm.shards/2 ] && fail "task 2 was to be killed, but was done before: ask for more replications"
echo "the same array again"
submit --wait > again.txt || fail "the array failed"
cat task.1 task.2
allow_finding $RATEPROOF merge slurm.shards/1 slurm.shards/2 slurm.shards/3 slurm.shards/4 --quiet --out slurm > slurm.txt
same slurm
diff one.txt slurm.txt || fail "the answer printed is another"
echo "ok"
