# A Slurm of one's own: one controller and two nodes of a processor each on this machine, in the folder `$base`, on `$port` and the two
# behind it. Sourced by check.sh and check-through.sh, which say `base`, `port` and `fail`. Needs slurm-wlm and munge, and root.
export SLURM_CONF="$base/slurm.conf"

# Ends servers, by the process ids that they wrote down.
end_servers() {
  for name in "$@"; do
    [ -f "$base/$name.pid" ] || continue
    pid=$(cat "$base/$name.pid")
    kill "$pid" 2> /dev/null || true
    for _ in $(seq 50); do kill -0 "$pid" 2> /dev/null || break; sleep 0.2; done
    ! kill -0 "$pid" 2> /dev/null || kill -9 "$pid"
  done
}
end_slurm() { end_servers slurmd.n1 slurmd.n2 slurmctld munged; }

start_slurm() {
  mkdir -p "$base/log" "$base/state" "$base/spool.n1" "$base/spool.n2" "$base/munge"
  chmod 755 "$base" "$base/munge"
  host=$(hostname -s) user=$(id -un)
  dd if=/dev/urandom of="$base/munge/key" bs=1024 count=1 2> /dev/null
  chmod 400 "$base/munge/key"
  munged --force --key-file="$base/munge/key" --socket="$base/munge/socket" --pid-file="$base/munged.pid" --log-file="$base/log/munged" --seed-file="$base/munge/seed"
  cat > "$base/slurm.conf" <<CONF
ClusterName=shards
SlurmctldHost=$host
SlurmUser=$user
SlurmdUser=$user
AuthType=auth/munge
AuthInfo=socket=$base/munge/socket
CryptoType=crypto/munge
SlurmctldPort=$port
StateSaveLocation=$base/state
SlurmdSpoolDir=$base/spool.%n
SlurmctldPidFile=$base/slurmctld.pid
SlurmdPidFile=$base/slurmd.%n.pid
SlurmctldLogFile=$base/log/slurmctld
SlurmdLogFile=$base/log/slurmd.%n
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
SchedulerType=sched/backfill
ReturnToService=2
MpiDefault=none
NodeName=n1 NodeHostname=$host NodeAddr=127.0.0.1 Port=$((port + 1)) CPUs=1 State=UNKNOWN
NodeName=n2 NodeHostname=$host NodeAddr=127.0.0.1 Port=$((port + 2)) CPUs=1 State=UNKNOWN
PartitionName=main Nodes=n1,n2 Default=YES MaxTime=INFINITE State=UP
CONF
  slurmctld -f "$SLURM_CONF"
  slurmd -f "$SLURM_CONF" -N n1
  slurmd -f "$SLURM_CONF" -N n2
  up() { [ "$(sinfo -h -o '%D %t' 2> /dev/null)" = '2 idle' ]; }
  for _ in $(seq 60); do up && break; sleep 0.5; done
  up || fail "the nodes did not come up"
}
