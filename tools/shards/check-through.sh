#!/bin/sh
# Checks that studies whose workers are processes give the very bytes of those with threads, also when a worker is killed in the middle:
# through plain processes, through ssh to this machine, and through Slurm over two nodes, from outside and inside of a job. Checks too that
# nothing is left of them after Ctrl-C. Starts an sshd and a Slurm of its own on this machine, in a temporary folder, and stops them. Needs
# openssh-server, slurm-wlm and munge, root and a built program:
#
#   npm run build && tools/shards/check-through.sh [SCENARIO [REPLICATIONS]]
#
# PORT: the first of four free ports, default 17827.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$(dirname "$here")")
scenario=$(realpath "${1:-$root/scenarios/rescue-tender.yaml}") replications=${2:-40} port=${PORT:-17827}
main="$root/dist/cli/main.js"
base=$(mktemp -d)
. "$here/private-slurm.sh"

stop() { end_slurm; end_servers sshd; cd / && rm -rf "$base"; }
trap stop EXIT
trap 'exit 130' INT TERM

fail() { echo "FAILED: $*" >&2; for file in "$base"/log/* "$base"/*.err; do echo "== $file"; tail -n 20 "$file"; done >&2 || true; exit 1; }
# Exit code 3 is a finding of the scenario.
allow_finding() { "$@" || [ $? -eq 3 ]; }
rateproof() { allow_finding node "$main" "$@"; }
# All workers of this program on this machine, whoever started them.
workers() { ps -eo pid=,args= | awk -v main="$main" '$2 ~ /node$/ && $3 == main && $4 == "worker" { print $1 }'; }
none_left() {
  for _ in $(seq 100); do [ -z "$(workers)" ] && return; sleep 0.1; done
  fail "workers are left behind $1"
}
same() {
  diff -r "$base/$2" "$base/$1" || fail "$1 is not what threads give"
  diff "$base/$2.txt" "$base/$1.txt" || fail "the answer printed is another"
  echo "$1: the very bytes of threads"
}

cd "$base"
simulate="simulate $scenario --replications $replications --seed through"
# A study that chooses as it goes what it runs next, and could not be run in parts.
rate="rate $root/scenarios/starter.yaml --from 3 --to 5 --step 0.5 --replications 8"
rateproof $simulate --out threads > threads.txt 2> threads.err
rateproof $rate --out rate-threads > rate-threads.txt 2> rate-threads.err

# killed NAME COMMAND: simulates through COMMAND, and kills a worker when the journal holds some replications.
killed() {
  name=$1
  shift
  rateproof $simulate --workers 2 --through "$*" --out "$name" > "$name.txt" 2> "$name.err" &
  study=$!
  for _ in $(seq 6000); do [ "$(stat -c %s "$name.journal" 2> /dev/null || echo 0)" -gt 100000 ] && break; sleep 0.1; done
  victim=$(workers | head -n 1)
  [ -n "$victim" ] || fail "$name: no worker to kill; ask for more replications"
  kill -9 "$victim"
  wait "$study" || fail "$name"
  grep 'its replication is run again' "$name.err" || fail "$name: nobody missed the worker"
  same "$name" threads
  none_left "$name"
}
# chooses NAME COMMAND: the same of the study that chooses, without a kill.
chooses() {
  name=$1
  shift
  rateproof $rate --workers 2 --through "$*" --out "$name" > "$name.txt" 2> "$name.err" || fail "$name"
  same "$name" rate-threads
}
# interrupted NAME COMMAND: presses Ctrl-C while two workers are at work.
interrupted() {
  name=$1
  shift
  node "$main" $simulate --workers 2 --through "$*" > /dev/null 2> "$name.err" &
  study=$!
  for _ in $(seq 600); do [ "$(workers | wc -l)" -eq 2 ] && break; sleep 0.1; done
  [ "$(workers | wc -l)" -eq 2 ] || fail "$name: no two workers came"
  kill -INT "$study"
  wait "$study" && fail "$name was not interrupted" || [ $? -eq 130 ] || fail "$name ended otherwise"
  none_left "$name"
  echo "$name: nothing is left"
}

echo "Plain processes"
killed plain nice -n 1
chooses rate-plain nice -n 1
interrupted plain-interrupted nice -n 1

echo "ssh to this machine"
mkdir -p log /run/sshd
ssh-keygen -q -t ed25519 -N '' -f host.key
ssh-keygen -q -t ed25519 -N '' -f user.key
cp user.key.pub authorized
# StrictModes would look at the rights of all folders above.
cat > sshd.conf <<CONF
Port $((port + 3))
ListenAddress 127.0.0.1
HostKey $base/host.key
AuthorizedKeysFile $base/authorized
PidFile $base/sshd.pid
StrictModes no
CONF
/usr/sbin/sshd -f "$base/sshd.conf" -E "$base/log/sshd"
ssh="ssh -p $((port + 3)) -i $base/user.key -o BatchMode=yes -o StrictHostKeyChecking=no -o UserKnownHostsFile=$base/known -o LogLevel=ERROR 127.0.0.1"
killed ssh "$ssh"
chooses rate-ssh "$ssh"
interrupted ssh-interrupted "$ssh"

echo "Slurm: one controller, two nodes; each worker is a job"
start_slurm
killed slurm srun --exclusive -n1 -c1
chooses rate-slurm srun --exclusive -n1 -c1
interrupted slurm-interrupted srun --exclusive -n1 -c1
for _ in $(seq 300); do [ -z "$(squeue -h)" ] && break; sleep 0.2; done
[ -z "$(squeue -h)" ] || fail "jobs are left in the queue: $(squeue -h)"

echo "Slurm: a job of two tasks; each worker is a step of it"
sbatch --parsable --wait -n2 -N2 --output="$base/batch.err" --wrap "cd $base; node $main $rate --workers 2 --finding-ok --through 'srun --exclusive -n1 -N1 -c1' --out rate-batch > rate-batch.txt" > /dev/null || fail "the batch job"
cat batch.err
same rate-batch rate-threads
echo "ok"
